package org.docksweep.kiosk.night;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.UUID;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.KioskToken;
import org.docksweep.contract.Person;
import org.docksweep.contract.TaughtPoint;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.ModelBook;
import org.docksweep.kiosk.service.ChildService;
import org.docksweep.kiosk.service.ServiceClient;
import org.docksweep.kiosk.teaching.TeachingBench;
import org.docksweep.kiosk.teaching.TeachingState;
import org.docksweep.kiosk.teaching.TeachingState.Activity;
import org.docksweep.kiosk.teaching.TeachingStep;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A lesson handed in to the real service: refused to who may not, stored as a whole by a manager. */
class TeachingIT {
    private static final String TOKEN = "manager-of-the-tests-0123456789-abcdefgh";
    private static final String PIN = "730514";

    @TempDir
    private Path folder;

    @Test
    void storesTheLessonForAManagerAndForNobodyElse() throws Exception {
        Path jar = Capability.serviceJar();
        try (ChildService service = ChildService.start(jar, folder.resolve("service"), TOKEN)) {
            ServiceClient manager = new ServiceClient(service.address(), TOKEN);
            hire(manager, "Ines Duna", "BADGE-DOCK", Person.Role.DOCK);
            hire(manager, "Rosa Marram", "BADGE-BOSS", Person.Role.MANAGER);
            KioskToken token = manager.post(
                    ApiPaths.KIOSK_TOKENS, new KioskToken.Order("kiosk-01", KioskToken.Role.DOCK), KioskToken.class);
            try (TeachingBench bench =
                    new TeachingBench(folder.resolve("kiosk"), new ServiceClient(service.address(), token.token()))) {
                bench.draw("SURF12");
                for (AssetTag tag : bench.good().subList(0, 2)) {
                    bench.sweep(tag);
                }
                TeachingState refused = handIn(bench, "BADGE-DOCK");
                assertThat(refused.message().orElseThrow().text().key()).isEqualTo("teach-not-allowed");
                assertThat(models(manager)).doesNotContain("SURF12");

                bench.desk.step(TeachingStep.BACK);
                bench.await("the units again", s -> s.activity() == Activity.UNITS);
                TeachingState stored = handIn(bench, "BADGE-BOSS");

                assertThat(stored.message().orElseThrow().text().key()).isEqualTo("teach-stored");
                assertThat(stored.activity()).isEqualTo(Activity.MODELS);
                assertThat(models(manager)).contains("SURF12");
                assertThat(List.of(manager.get(ApiPaths.LESSONS, TaughtPoint[].class)))
                        .singleElement()
                        .satisfies(t -> {
                            assertThat(t.modelCode()).isEqualTo("SURF12");
                            assertThat(t.unitCount()).isEqualTo(2);
                            assertThat(t.taughtBy()).isEqualTo("Rosa Marram");
                        });
            }
        }
    }

    private static TeachingState handIn(TeachingBench bench, String badge) throws InterruptedException {
        bench.desk.step(TeachingStep.FINISH);
        bench.await("sign-on", s -> s.activity() == Activity.SIGN_ON && !s.secret());
        bench.desk.scan(badge);
        bench.await("the PIN kept secret", TeachingState::secret);
        bench.desk.scan(PIN);
        return bench.await("an answer", s -> !s.busy() && s.message().isPresent());
    }

    private static List<String> models(ServiceClient manager) throws Exception {
        return manager.get(ApiPaths.MODEL_BOOK, ModelBook.class).cabinetModels().stream()
                .map(m -> m.code())
                .toList();
    }

    private static void hire(ServiceClient manager, String name, String badge, Person.Role role) throws Exception {
        Person person = new Person(UUID.randomUUID(), name, badge, role, false);
        manager.put(ApiPaths.PEOPLE + "/" + person.id(), person);
        manager.put(ApiPaths.PEOPLE + "/" + person.id() + ApiPaths.PIN, new Person.Pin(PIN));
    }
}
