package org.docksweep.kiosk.bench;

import java.util.Locale;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.TagReading;

/** What a scanned or typed text is, by its looks. A job code that was typed may be in small letters. */
sealed interface BenchScan {
    /**
     * The code on a repair tag.
     *
     * @param code the code
     */
    record Job(JobCode code) implements BenchScan {}

    /**
     * The label of a cabinet.
     *
     * @param tag the tag
     */
    record Cabinet(AssetTag tag) implements BenchScan {}

    /**
     * Neither: the number of a part, or nothing.
     *
     * @param text as it came
     */
    record Other(String text) implements BenchScan {}

    static BenchScan read(String text) {
        String upper = text.toUpperCase(Locale.ROOT);
        if (JobCode.looksLike(upper)) {
            return new Job(new JobCode(upper));
        }
        return TagReading.read(text) instanceof TagReading.One one ? new Cabinet(one.tag()) : new Other(text);
    }
}
