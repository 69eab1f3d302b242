package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.BenchActionBody;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.contract.DockConfusion;
import org.docksweep.contract.FindingBody;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.contract.KioskToken;
import org.docksweep.contract.LearnedPriors;
import org.docksweep.contract.LearningDecision;
import org.docksweep.contract.Problem;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.ChargeClass;
import org.docksweep.fleet.ConfirmedCause;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.Sighting;
import org.docksweep.suspect.FaultKind;
import org.docksweep.suspect.PriorTeacher;
import org.docksweep.suspect.Priors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

@ExtendWith(RunningService.class)
class LearningTest {
    private final Api api;
    private final OwnDrivers drivers;

    LearningTest(Api api) {
        this.api = api;
        this.drivers = OwnDrivers.register(api);
    }

    /** A cabinet fails at the dock with "horn driver open"; the bench finds a cause. Gives the finding's id. */
    private UUID repair(ConfirmedCause cause) {
        AssetTag tag = drivers.newCabinet(api);
        JobCode code = House.newCode();
        House.put(api, House.fail(tag, drivers.model(), code));
        String job = ApiPaths.BENCH_JOBS + "/" + code;
        UUID action = UUID.randomUUID();
        int revision = api.get(job).as(BenchJobBody.class).revision();
        Api.Answer accepted = api.put(
                job + ApiPaths.ACTIONS + "/" + action,
                new BenchActionBody(
                        action,
                        BenchActionBody.Verb.ACCEPT,
                        revision,
                        Instant.now(),
                        "Ines Duna",
                        "bench-1",
                        null,
                        null,
                        null));
        assertThat(accepted.status()).as("%s", accepted).isEqualTo(201);
        UUID finding = UUID.randomUUID();
        Api.Answer found = api.put(
                job + ApiPaths.FINDINGS + "/" + finding,
                new FindingBody(
                        finding,
                        Instant.now(),
                        "Ines Duna",
                        "bench-1",
                        "HF",
                        null,
                        null,
                        null,
                        false,
                        Set.of(Sighting.CORRODED_JOINT),
                        cause,
                        null,
                        ChargeClass.WORN));
        assertThat(found.status()).as("%s", found).isEqualTo(201);
        return finding;
    }

    private LearnedPriors learned() {
        return api.get(ApiPaths.LEARNED_PRIORS).as(LearnedPriors.class);
    }

    private double factor(FaultKind kind) {
        return learned().rows().stream()
                .filter(r -> r.ownerCode().equals(drivers.horn()) && r.kind() == kind)
                .mapToDouble(PriorTeacher.Row::factor)
                .findFirst()
                .orElse(1);
    }

    private Api.Answer decide(LearningDecision.Kind kind, UUID finding) {
        UUID id = UUID.randomUUID();
        return api.put(
                ApiPaths.LEARNING_DECISIONS + "/" + id,
                new LearningDecision(id, Instant.now(), "Rosa Marram", kind, finding, "a test said so"));
    }

    @Test
    void learnsFromTheBenchAndTellsKiosks() {
        repair(ConfirmedCause.LEAD_IN_JOINT);
        repair(ConfirmedCause.LEAD_IN_JOINT);
        repair(ConfirmedCause.LEAD_IN_JOINT);

        // The dock suspected an open driver, so that is what the three joints showed as.
        assertThat(factor(FaultKind.DRIVER_OPEN)).isGreaterThan(1);
        assertThat(factor(FaultKind.COIL_SEIZED)).isLessThan(factor(FaultKind.DRIVER_OPEN));
        Priors priors = api.get(ApiPaths.KIOSK_SNAPSHOT).as(KioskSnapshot.class).priorsInForce();
        assertThat(priors.lookFirst())
                .contains(new Priors.LookFirst(
                        drivers.horn(), FaultKind.DRIVER_OPEN, ConfirmedCause.LEAD_IN_JOINT, 3, 3));
        assertThat(priors.factors()).anyMatch(f -> f.ownerCode().equals(drivers.horn()));
    }

    @Test
    void forgetsAFindingThatIsLeftOutAndLearnsItAgain() {
        UUID wrong = repair(ConfirmedCause.COIL_OPEN);
        double learned = factor(FaultKind.DRIVER_OPEN);
        assertThat(learned).isNotEqualTo(1);

        assertThat(decide(LearningDecision.Kind.LEAVE_OUT, wrong).status()).isEqualTo(201);
        assertThat(factor(FaultKind.DRIVER_OPEN)).isEqualTo(1);
        assertThat(learned().findings())
                .filteredOn(f -> f.id().equals(wrong))
                .singleElement()
                .satisfies(f -> assertThat(f.leftOut()).isTrue());

        assertThat(decide(LearningDecision.Kind.TAKE_IN, wrong).status()).isEqualTo(201);
        assertThat(factor(FaultKind.DRIVER_OPEN)).isEqualTo(learned);
    }

    @Test
    void goesByTheUsualWeightsWhilePaused() {
        repair(ConfirmedCause.COIL_OPEN);
        decide(LearningDecision.Kind.PAUSE, null);
        try {
            assertThat(learned().used()).isFalse();
            assertThat(learned().rows()).isNotEmpty();
            assertThat(api.get(ApiPaths.KIOSK_SNAPSHOT).as(KioskSnapshot.class).priorsInForce())
                    .isEqualTo(Priors.USUAL);
        } finally {
            decide(LearningDecision.Kind.USE, null);
        }
        assertThat(api.get(ApiPaths.KIOSK_SNAPSHOT)
                        .as(KioskSnapshot.class)
                        .priorsInForce()
                        .factors())
                .isNotEmpty();
        assertThat(api.get(ApiPaths.LEARNING_DECISIONS).listOf(LearningDecision.class))
                .extracting(LearningDecision::kind)
                .contains(LearningDecision.Kind.PAUSE, LearningDecision.Kind.USE);
    }

    @Test
    void keepsWhatTheDockGuessedAgainstWhatWasFound() {
        DockConfusion before = api.get(ApiPaths.DOCK_CONFUSION).as(DockConfusion.class);
        repair(ConfirmedCause.COIL_OPEN);
        repair(ConfirmedCause.MAGNET_WEAK);
        repair(ConfirmedCause.NO_FAULT_FOUND);
        DockConfusion after = api.get(ApiPaths.DOCK_CONFUSION).as(DockConfusion.class);

        assertThat(after.jobs() - before.jobs()).isEqualTo(3);
        assertThat(after.placeFirst() - before.placeFirst()).isEqualTo(3);
        assertThat(after.causeFirst() - before.causeFirst()).isEqualTo(1);
        assertThat(after.nothingFound() - before.nothingFound()).isEqualTo(1);
        assertThat(after.placeFirstLower()).isLessThan((double) after.placeFirst() / after.jobs());
        assertThat(after.cells())
                .anyMatch(c -> c.guess() == FaultKind.DRIVER_OPEN && c.found() == ConfirmedCause.MAGNET_WEAK);
    }

    @Test
    void refusesDecisionsThatMakeNoSense() {
        assertThat(decide(LearningDecision.Kind.LEAVE_OUT, UUID.randomUUID())
                        .problem()
                        .status())
                .isEqualTo(404);
        assertThat(decide(LearningDecision.Kind.LEAVE_OUT, null).problem().errors())
                .extracting(Problem.Entry::column)
                .containsExactly("findingId");
        assertThat(decide(LearningDecision.Kind.PAUSE, UUID.randomUUID())
                        .problem()
                        .errors())
                .extracting(Problem.Entry::column)
                .containsExactly("findingId");
    }

    @Test
    void letsManagersDecideAndADockLook() {
        KioskToken token = api.post(
                        ApiPaths.KIOSK_TOKENS, new KioskToken.Order("learner " + House.next(), KioskToken.Role.DOCK))
                .as(KioskToken.class);
        Api dock = api.as(token.token());
        UUID id = UUID.randomUUID();
        LearningDecision pause = new LearningDecision(
                id, Instant.now(), "Ines Duna", LearningDecision.Kind.PAUSE, null, "no manager said so");

        assertThat(dock.put(ApiPaths.LEARNING_DECISIONS + "/" + id, pause).status())
                .isEqualTo(403);
        assertThat(dock.post(ApiPaths.PAST_PART_LIVES, List.of()).status()).isEqualTo(403);
        assertThat(dock.get(ApiPaths.LEARNED_PRIORS).status()).isEqualTo(200);
        assertThat(dock.get(ApiPaths.DRIFT_WATCH).status()).isEqualTo(200);
        assertThat(learned().used()).isTrue();
    }

    @Test
    void takesADecisionOnce() {
        LearningDecision use = new LearningDecision(
                UUID.randomUUID(), Instant.now(), "Rosa Marram", LearningDecision.Kind.USE, null, "as before");
        String path = ApiPaths.LEARNING_DECISIONS + "/" + use.id();

        assertThat(api.put(path, use).status()).isEqualTo(201);
        assertThat(api.put(path, use).status()).isEqualTo(200);
        assertThat(api.put(path, new LearningDecision(use.id(), use.at(), use.by(), use.kind(), null, "other words"))
                        .problem()
                        .type())
                .isEqualTo(ProblemTypes.ID_REUSED);
    }
}
