package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** A short run of {@link Fuzz}; the long one is a command, see docs/figures.md. */
@ExtendWith(RunningService.class)
class FuzzTest {
    private final Api api;

    FuzzTest(Api api) {
        this.api = api;
    }

    @Test
    void refusesWhatIsWrongWithoutADefect() {
        Fuzz fuzz = new Fuzz(api, 20_260_314).run(1_500);
        assertThat(fuzz.wrong()).isEmpty();
        assertThat(fuzz.hitEverything()).isTrue();
        assertThat(fuzz.accepted()).isGreaterThan(fuzz.requests() / 5);
        System.out.println(fuzz.report());
    }
}
