package org.docksweep.kiosk.dock;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicBoolean;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Reasons;
import org.docksweep.kiosk.dock.DockState.NoticeAction;
import org.docksweep.kiosk.dock.DockState.TagPrint;
import org.docksweep.kiosk.printing.PrintQueue;
import org.docksweep.paper.TagForm;

/**
 * A kiosk that prints, as a process of its own because Java asks for the address of the print server only at start. Arguments: data
 * folder, form of the tags. Each line of its input is a step; it answers with one line of words.
 */
final class PrintingKiosk {
    private PrintingKiosk() {}

    public static void main(String[] arguments) throws Exception {
        Clock clock = Clock.systemUTC();
        FaultDock.Setting setting = new FaultDock.Setting(
                Path.of(arguments[0]),
                1,
                new ScriptedRig(),
                Optional.of(new PrintQueue(PrintServer.QUEUE)),
                TagForm.valueOf(arguments[1]),
                clock);
        BufferedReader steps = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
        try (FaultService service = new FaultService(clock);
                FaultDock kiosk = new FaultDock(setting, service)) {
            System.out.println("up");
            for (String step = steps.readLine(); step != null; step = steps.readLine()) {
                System.out.println("did " + run(kiosk, step.split(" ")));
            }
        }
    }

    private static boolean isPrinting(DockState state) {
        return state.answer().filter(a -> a.tagPrint() == TagPrint.PRINTING).isPresent();
    }

    private static String run(FaultDock kiosk, String[] step) throws InterruptedException {
        switch (step[0]) {
            case "fail" -> {
                kiosk.gate.fail();
                if (step[1].equals(SmallHouse.BIAMPED.value())) {
                    kiosk.gate.fail();
                }
                kiosk.dock.scan(step[1]);
                kiosk.await(
                        "the visual list",
                        s -> s.phase() == DockState.Phase.LOOK
                                && s.cabinet().orElseThrow().tag().value().equals(step[1]));
                kiosk.dock.lookedOver(Set.of());
                kiosk.answer(new AssetTag(step[1]));
            }
            case "reprint" -> {
                // The state before the key was pressed looks like the one after it.
                AtomicBoolean printing = new AtomicBoolean();
                kiosk.dock.addListener(s -> printing.compareAndSet(false, isPrinting(s)));
                kiosk.dock.printTag();
                kiosk.await("the printing", s -> printing.get() && !isPrinting(s));
            }
            case "close" -> kiosk.dock.closeList();
            default -> throw new IllegalArgumentException("no step " + step[0]);
        }
        DockState state = step[0].equals("close")
                ? kiosk.await("the sheet", s -> s.notice().isPresent())
                : kiosk.await(
                        "the tag",
                        s -> s.answer()
                                .filter(a -> a.tagPrint() != TagPrint.PRINTING && a.tagPrint() != TagPrint.NOT_NEEDED)
                                .isPresent());
        String notice =
                state.notice().map(n -> Reasons.text(n.text(), Locale.ENGLISH)).orElse("");
        kiosk.dock.notice(NoticeAction.DISMISS);
        kiosk.await("the notice to go", s -> s.notice().isEmpty());
        String tag = state.answer().map(a -> a.tagPrint().name()).orElse("");
        var counts = kiosk.counts();
        return tag + "|" + notice + "|" + (counts.waiting() + counts.parked() + counts.sent());
    }
}
