package org.docksweep.kiosk.screens;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.contract.BenchJobBody.State;
import org.docksweep.contract.BenchJobFile;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.FindingBody;
import org.docksweep.contract.FitAnswer;
import org.docksweep.contract.PartExchangeBody;
import org.docksweep.contract.PartStock;
import org.docksweep.contract.ProofState;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.ChargeClass;
import org.docksweep.fleet.ConfirmedCause;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.Part;
import org.docksweep.fleet.PartKind;
import org.docksweep.fleet.PartSource;
import org.docksweep.fleet.ProcedureCard;
import org.docksweep.fleet.ProcedurePurpose;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Sighting;
import org.docksweep.gate.ReadingState;
import org.docksweep.judge.PositionState;
import org.docksweep.kiosk.bench.BenchState;
import org.docksweep.kiosk.bench.BenchState.Activity;
import org.docksweep.kiosk.bench.BenchState.CardAtHand;
import org.docksweep.kiosk.bench.BenchState.Choice;
import org.docksweep.kiosk.bench.BenchState.JobAtHand;
import org.docksweep.kiosk.bench.BenchState.Message;
import org.docksweep.kiosk.bench.BenchState.PartAtHand;
import org.docksweep.kiosk.bench.BenchStep;
import org.docksweep.suspect.FaultKind;
import org.docksweep.suspect.Suspect;

/** One believable picture of every state the bench can be in, by name. */
final class SampleBench {
    private static final Instant AT = Instant.parse("2031-10-12T09:20:00Z");
    private static final UUID ID = UUID.fromString("8d7d4f2e-0000-4000-8000-000000000001");
    private static final Part DIAPHRAGM = new Part(
            "DIA-TERN-44-16",
            "Diaphragm for TERN-44, 16 ohm",
            PartKind.DIAPHRAGM,
            PartSource.AFTERMARKET,
            List.of("TERN-44"),
            List.of(),
            16.0,
            null,
            true,
            2,
            4,
            8900);

    private SampleBench() {}

    static Map<String, BenchState> all() {
        Map<String, BenchState> all = new LinkedHashMap<>();
        all.put("queue-empty", state(Activity.QUEUE, null, "bench-ask-empty", List.of(), List.of()));
        all.put("queue", queue());
        all.put(
                "job-waiting",
                job(
                        State.WAITING,
                        BenchStep.TAKE,
                        BenchStep.LISTEN,
                        BenchStep.KEEP_SOUND,
                        BenchStep.PRINT_CARD,
                        BenchStep.BACK));
        all.put(
                "job-accepted",
                job(
                        State.ACCEPTED,
                        BenchStep.BEGIN_REPAIR,
                        BenchStep.FIND,
                        BenchStep.OTHERWISE,
                        BenchStep.BEGIN_PROOF,
                        BenchStep.LISTEN,
                        BenchStep.KEEP_SOUND,
                        BenchStep.OTHER_CARD,
                        BenchStep.PRINT_CARD,
                        BenchStep.BACK));
        all.put(
                "repair",
                job(
                        State.IN_REPAIR,
                        BenchStep.TICK,
                        BenchStep.FIND,
                        BenchStep.BEGIN_PROOF,
                        BenchStep.OTHERWISE,
                        BenchStep.UNTICK,
                        BenchStep.OTHER_CARD,
                        BenchStep.PRINT_CARD,
                        BenchStep.BACK));
        all.put("finding", finding());
        all.put("part-fits", part(true));
        all.put("part-refused", part(false));
        all.put("proof-sweep", proof(Optional.of(0.4), "bench-ask-proof", List.of()));
        all.put(
                "proof-sound",
                proof(
                        Optional.empty(),
                        "bench-ask-sound",
                        List.of(
                                BenchStep.SOUND_CLEAN,
                                BenchStep.SOUND_NOT_CLEAN,
                                BenchStep.LISTEN,
                                BenchStep.KEEP_SOUND)));
        all.put("proof-listens", listens("listen-plays", "IN", "43", "1", "3"));
        all.put("proof-no-output", refused(listens("listen-no-output")));
        all.put("proof-kept", listens("listen-kept", "docksweep/sounds/MCH-000117-IN-20311012-092000.wav", "0.216"));
        all.put("proof-slow", proof(Optional.of(0.3), "bench-slow-at", List.of(), "78"));
        all.put("proof-slow-stopped", stopped());
        all.put(
                "job-proving",
                job(
                        State.PROVING,
                        BenchStep.SWEEP,
                        BenchStep.OTHERWISE,
                        BenchStep.DRIVER_ON_BENCH,
                        BenchStep.FIND,
                        BenchStep.BEGIN_REPAIR,
                        BenchStep.BACK));
        all.put("proof-bare", bare("bench-ask-bare-horn", "TERN-44", "HF", "proof-missing-bare", "HF", "1"));
        all.put(
                "proof-bare-cone",
                bare("bench-ask-bare-cone", "SPINIFEX-12", "LF", "bench-bare-no-reference", "SPINIFEX-12"));
        all.put(
                "ending",
                withJob(
                        Activity.ENDING,
                        jobAtHand(State.PROVING, true),
                        Reason.of("bench-ask-ending", "35", "-"),
                        List.of(
                                BenchStep.SIGN_OFF,
                                BenchStep.HAND_BACK,
                                BenchStep.RETURN_UNREPAIRED,
                                BenchStep.SCRAP,
                                BenchStep.BACK)));
        return all;
    }

    private static BenchState queue() {
        List<BenchJobBody> jobs = new ArrayList<>();
        String[] faults = {"HF", "LF", "LF2", "LF", "MF"};
        for (int i = 0; i < faults.length; i++) {
            jobs.add(new BenchJobBody(
                    JobCode.of(1, 17 + i),
                    new AssetTag(i == 0 ? "MCH-000117" : "MCH-00011" + i),
                    SampleHouse.MODELS.get(i).code(),
                    i == 1 ? State.WAITING_FOR_PART : State.WAITING,
                    AT,
                    i < 3 ? LocalDate.of(2031, 10, 15 + i) : null,
                    faults[i],
                    Reason.of("horn-open"),
                    suspects(),
                    List.of(ID),
                    1,
                    i == 1 ? "bench-1" : null,
                    i == 1 ? "Nils Avocet" : null,
                    null,
                    25));
        }
        return new BenchState(
                Activity.QUEUE,
                jobs,
                1,
                Optional.empty(),
                Reason.of("bench-ask-queue"),
                Optional.of(new Message(ReadingState.OK, Reason.of("bench-signed-off", "J01-00016", "MCH-000107"))),
                List.of(BenchStep.OPEN),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                false);
    }

    private static List<Suspect> suspects() {
        return List.of(
                new Suspect(
                        FaultKind.DRIVER_OPEN,
                        "IN",
                        "HF",
                        null,
                        0.93,
                        Reason.of("evidence"),
                        Reason.of("next-lead-in")),
                new Suspect(
                        FaultKind.PART_OPEN, "IN", null, "C1", 0.07, Reason.of("evidence"), Reason.of("next-lead-in")));
    }

    private static BenchState job(State stands, BenchStep... steps) {
        return withJob(Activity.JOB, jobAtHand(stands, false), Reason.of("bench-ask-" + stands.name()), List.of(steps));
    }

    private static JobAtHand jobAtHand(State stands, boolean proved) {
        CabinetModel model = SampleHouse.TWO_WAY;
        BenchJobBody body = new BenchJobBody(
                JobCode.of(1, 17),
                new AssetTag("MCH-000117"),
                model.code(),
                stands,
                AT,
                LocalDate.of(2031, 10, 16),
                "HF",
                Reason.of("horn-open"),
                suspects(),
                List.of(ID),
                4,
                "bench-1",
                "Nils Avocet",
                null,
                25);
        List<FindingBody> findings = stands == State.PROVING
                ? List.of(new FindingBody(
                        ID,
                        AT,
                        "Nils Avocet",
                        "bench-1",
                        "HF",
                        null,
                        null,
                        null,
                        true,
                        Set.of(Sighting.BROKEN_LEAD_IN),
                        ConfirmedCause.LEAD_IN_JOINT,
                        null,
                        ChargeClass.WORN))
                : List.of();
        List<PartExchangeBody> exchanges = stands == State.PROVING
                ? List.of(new PartExchangeBody(
                        ID,
                        AT,
                        "Nils Avocet",
                        "bench-1",
                        "HF",
                        null,
                        new PartExchangeBody.Removed(
                                PartExchangeBody.What.DIAPHRAGM, "D-1", PartExchangeBody.Fate.SCRAPPED),
                        new PartExchangeBody.Fitted(DIAPHRAGM.number(), "AF-20771", 1)))
                : List.of();
        BenchJobFile file = new BenchJobFile(
                body,
                new CabinetBody(body.tag(), model.code(), "C-04", CabinetStatus.BENCH, false, List.of()),
                List.of(),
                List.of(),
                findings,
                exchanges,
                List.of(),
                List.of(),
                new ProofState(proved, proved ? 2 : 0, Map.of(), List.of()));
        return new JobAtHand(
                file,
                model,
                List.of(
                        new PositionState("HF", ReadingState.FAULT, Reason.of("word-open"), null),
                        new PositionState("LF", ReadingState.OK, Reason.of("word-ok"), null)),
                Optional.of(SampleCurves.hornOpen()),
                Optional.of(card()));
    }

    private static CardAtHand card() {
        List<ProcedureCard.Step> steps = List.of(
                step("unplug", List.of(), List.of(Reason.of("bench-caution-lift"))),
                step("take-off-horn", List.of(), List.of()),
                step("mark", List.of(Reason.of("bench-number-polarity", "red dot at the upper terminal")), List.of()),
                step(
                        "take-out-diaphragm",
                        List.of(
                                Reason.of("bench-number-fasteners", "6", "M4 x 16", "hex socket 3 mm"),
                                Reason.of("bench-number-locating", "two pins in the top plate")),
                        List.of(Reason.of("bench-caution-magnet"))),
                step("clean-gap", List.of(), List.of()),
                step("fit-part", List.of(), List.of()),
                step("close-up", List.of(), List.of()),
                step("prove", List.of(), List.of()));
        return new CardAtHand(
                new ProcedureCard(ProcedurePurpose.DIAPHRAGM_REPLACEMENT, "TERN-44", 25, true, steps),
                "HF",
                Set.of("unplug", "take-off-horn", "mark"),
                1,
                2);
    }

    private static ProcedureCard.Step step(String code, List<Reason> numbers, List<Reason> cautions) {
        return new ProcedureCard.Step(code, Reason.of("procedure-" + code), numbers, null, cautions);
    }

    private static BenchState finding() {
        List<Choice> choices = new ArrayList<>();
        for (ConfirmedCause value : ConfirmedCause.values()) {
            choices.add(new Choice("C" + (value.ordinal() + 1), value, value == ConfirmedCause.DIAPHRAGM_DAMAGED));
        }
        for (Sighting value : Sighting.values()) {
            choices.add(new Choice("S" + (value.ordinal() + 1), value, value == Sighting.BROKEN_LEAD_IN));
        }
        for (ChargeClass value : ChargeClass.values()) {
            choices.add(new Choice("B" + (value.ordinal() + 1), value, value == ChargeClass.WORN));
        }
        BenchState plain = withJob(
                Activity.FINDING,
                jobAtHand(State.IN_REPAIR, false),
                Reason.of("bench-ask-finding", "open", "-"),
                List.of(BenchStep.STORE_FINDING, BenchStep.BACK));
        return new BenchState(
                plain.activity(),
                plain.queue(),
                plain.marked(),
                plain.job(),
                plain.prompt(),
                Optional.of(new Message(ReadingState.WATCH, Reason.of("bench-finding-needs-cause"))),
                plain.steps(),
                choices,
                Optional.empty(),
                Optional.empty(),
                false);
    }

    private static BenchState part(boolean fits) {
        FitAnswer answer = new FitAnswer(
                fits,
                fits
                        ? Reason.of("bench-ask-part", DIAPHRAGM.number())
                        : Reason.of("bench-unknown-part", DIAPHRAGM.number()));
        PartAtHand part = new PartAtHand(
                new PartStock(DIAPHRAGM, 3, List.of()),
                fits ? "AF-20771" : null,
                answer,
                "HF",
                null,
                PartExchangeBody.Fate.SCRAPPED);
        BenchState plain = withJobOnly(
                jobAtHand(State.IN_REPAIR, false),
                answer.reason(),
                fits
                        ? List.of(BenchStep.PUT_IN, BenchStep.OTHER_PLACE, BenchStep.BACK)
                        : List.of(BenchStep.OTHER_PLACE, BenchStep.BACK),
                part);
        return plain;
    }

    private static BenchState withJobOnly(JobAtHand job, Reason prompt, List<BenchStep> steps, PartAtHand part) {
        return new BenchState(
                Activity.PART,
                queue().queue(),
                0,
                Optional.of(job),
                prompt,
                Optional.empty(),
                steps,
                List.of(),
                Optional.of(part),
                Optional.empty(),
                false);
    }

    private static BenchState listens(String key, String... arguments) {
        return saying(
                proof(
                        Optional.empty(),
                        "bench-ask-sound",
                        List.of(
                                BenchStep.SOUND_CLEAN,
                                BenchStep.SOUND_NOT_CLEAN,
                                BenchStep.LISTEN,
                                BenchStep.KEEP_SOUND)),
                Reason.of(key, arguments));
    }

    private static BenchState stopped() {
        return saying(
                proof(
                        Optional.empty(),
                        "bench-ask-proof",
                        List.of(
                                BenchStep.SWEEP,
                                BenchStep.OTHERWISE,
                                BenchStep.DRIVER_ON_BENCH,
                                BenchStep.SLOW_SWEEP,
                                BenchStep.SLOW_AROUND,
                                BenchStep.BACK)),
                Reason.of("bench-slow-stopped", "1+ / 1-", "78"));
    }

    private static BenchState saying(BenchState plain, Reason text) {
        return saying(plain, ReadingState.OK, text);
    }

    private static BenchState saying(BenchState plain, ReadingState state, Reason text) {
        return new BenchState(
                plain.activity(),
                plain.queue(),
                plain.marked(),
                plain.job(),
                plain.prompt(),
                Optional.of(new Message(state, text)),
                plain.steps(),
                plain.choices(),
                plain.part(),
                plain.sweepShare(),
                plain.busy());
    }

    private static BenchState refused(BenchState said) {
        return saying(said, ReadingState.WATCH, said.message().orElseThrow().text());
    }

    private static BenchState proof(Optional<Double> share, String prompt, List<BenchStep> steps, String... of) {
        return new BenchState(
                Activity.PROOF,
                queue().queue(),
                0,
                Optional.of(jobAtHand(State.PROVING, false)),
                Reason.of(prompt, of),
                Optional.empty(),
                steps,
                List.of(),
                Optional.empty(),
                share,
                share.isPresent());
    }

    /** A bare driver is asked for, after the first clean sweep of the horn driver. */
    private static BenchState bare(String prompt, String driver, String position, String said, String... of) {
        JobAtHand plain = jobAtHand(State.PROVING, false);
        BenchJobFile file = plain.file();
        return new BenchState(
                Activity.PROOF,
                queue().queue(),
                0,
                Optional.of(new JobAtHand(
                        new BenchJobFile(
                                file.job(),
                                file.cabinet(),
                                file.cards(),
                                file.actions(),
                                file.findings(),
                                file.exchanges(),
                                file.ticks(),
                                file.proofs(),
                                new ProofState(false, 0, Map.of("HF", 1), List.of())),
                        plain.model(),
                        List.of(
                                new PositionState("HF", ReadingState.OK, Reason.of("word-ok"), "10.9 \u03a9"),
                                plain.positions().get(1)),
                        Optional.of(SampleCurves.bareHorn()),
                        plain.card())),
                Reason.of(prompt, driver, position, "+ / -"),
                Optional.of(new Message(ReadingState.WATCH, Reason.of(said, of))),
                List.of(
                        BenchStep.SWEEP,
                        BenchStep.OTHERWISE,
                        BenchStep.WHOLE_CABINET,
                        BenchStep.OTHER_PLACE,
                        BenchStep.SLOW_SWEEP,
                        BenchStep.SLOW_AROUND,
                        BenchStep.BACK),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                false);
    }

    private static BenchState withJob(Activity activity, JobAtHand job, Reason prompt, List<BenchStep> steps) {
        return new BenchState(
                activity,
                queue().queue(),
                0,
                Optional.of(job),
                prompt,
                Optional.of(new Message(ReadingState.OK, Reason.of("bench-taken", "J01-00017"))),
                steps,
                List.of(),
                Optional.empty(),
                Optional.empty(),
                false);
    }

    private static BenchState state(
            Activity activity, JobAtHand job, String prompt, List<BenchStep> steps, List<BenchJobBody> queue) {
        return new BenchState(
                activity,
                queue,
                -1,
                Optional.ofNullable(job),
                Reason.of(prompt),
                Optional.empty(),
                steps,
                List.of(),
                Optional.empty(),
                Optional.empty(),
                false);
    }
}
