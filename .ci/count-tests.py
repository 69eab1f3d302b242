"""Counts tests from the XML reports, per capability an integration test needs, and lists every skipped one.

Ends with 1 when an integration test failed or was skipped, or when none ran at all. A capability is what a helper class
among the tests guards with a property docksweep.require.NAME; a test needs it when its source calls that class.
"""
import glob
import os
import re
import sys
import xml.etree.ElementTree as ElementTree

SWITCH = re.compile(r'"docksweep\.require\.([a-z-]+)"')


def sources():
    for path in glob.glob("*/src/test/java/**/*.java", recursive=True):
        with open(path, encoding="utf-8") as file:
            yield os.path.basename(path)[: -len(".java")], file.read()


def needs_by_class():
    texts = dict(sources())
    guards = {name: SWITCH.findall(text)[0] for name, text in texts.items() if SWITCH.search(text)}
    return {
        name: sorted({need for guard, need in guards.items() if re.search(rf"\b{guard}\.\w+\(", text)})
        for name, text in texts.items()
    }


def reports(kind):
    for path in sorted(glob.glob(f"*/target/{kind}-reports/TEST-*.xml")):
        for case in ElementTree.parse(path).getroot().iter("testcase"):
            skipped = case.find("skipped")
            failed = case.find("failure") is not None or case.find("error") is not None
            outcome = "skipped" if skipped is not None else "failed" if failed else "passed"
            why = "" if skipped is None else skipped.get("message") or ""
            name = case.get("classname", "").rsplit(".", 1)[-1]
            yield name.split("$")[0], case.get("name"), outcome, why


def main():
    needs = needs_by_class()
    rows = {}
    skips = []
    for kind in ("surefire", "failsafe"):
        for name, case, outcome, why in reports(kind):
            # The second run of the service's tests carries its engine behind the class name.
            name, _, engine = name.partition("(")
            wanted = needs.get(name, []) + ([engine.rstrip(")")] if engine else [])
            capability = " + ".join(wanted) or ("nothing" if kind == "surefire" else "the packaged parts")
            row = rows.setdefault((kind, capability), {"passed": 0, "failed": 0, "skipped": 0})
            row[outcome] += 1
            if outcome == "skipped":
                skips.append(f"{name}.{case}: {why}")
    print("== tests by what they need")
    for (kind, capability), row in sorted(rows.items(), reverse=True):
        title = ("unit, needs " if kind == "surefire" else "integration, needs ") + capability
        print(f"{title:<44}{row['passed']:>6} passed {row['failed']:>4} failed {row['skipped']:>4} skipped")
    for skip in skips:
        print("skipped: " + skip)
    integration = [row for (kind, _), row in rows.items() if kind == "failsafe"]
    wrong = 0
    if not integration:
        print("no integration test ran", file=sys.stderr)
        wrong = 1
    if any(row["failed"] or row["skipped"] for row in integration):
        print("an integration test failed or was skipped although all it needs was installed", file=sys.stderr)
        wrong = 1
    sys.stderr.flush()
    total = {key: sum(row[key] for row in rows.values()) for key in ("passed", "failed", "skipped")}
    print(f"{total['passed']} passed, {total['failed']} failed, {total['skipped']} skipped", flush=True)
    return wrong


if __name__ == "__main__":
    sys.exit(main())
