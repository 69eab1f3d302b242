package org.docksweep.kiosk.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.text.MessageFormat;
import java.util.Arrays;
import java.util.Locale;
import java.util.Properties;
import java.util.stream.Stream;
import org.docksweep.fleet.VisualItem;
import org.docksweep.judge.Prompt;
import org.docksweep.kiosk.dock.DockState.NoticeAction;
import org.docksweep.kiosk.dock.DockState.SlotState;
import org.docksweep.kiosk.dock.DockState.TagPrint;
import org.docksweep.suspect.FaultKind;
import org.docksweep.suspect.Suspect.Likelihood;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TextsTest {
    private static Properties bundle(String suffix) throws IOException {
        Properties properties = new Properties();
        String name = "screens" + suffix + ".properties";
        try (InputStream in = Texts.class.getResourceAsStream(name)) {
            properties.load(new InputStreamReader(in, StandardCharsets.UTF_8));
        }
        return properties;
    }

    @Test
    void saysTheSameKeysInGermanAsInEnglish() throws IOException {
        assertThat(bundle("_de").stringPropertyNames())
                .containsExactlyInAnyOrderElementsOf(bundle("").stringPropertyNames());
    }

    @Test
    void takesTheSameArgumentsInGermanAsInEnglish() throws IOException {
        Properties english = bundle("");
        Properties german = bundle("_de");
        for (String key : english.stringPropertyNames()) {
            assertThat(new MessageFormat(german.getProperty(key), Locale.GERMAN).getFormatsByArgumentIndex())
                    .as(key)
                    .hasSameSizeAs(
                            new MessageFormat(english.getProperty(key), Locale.ENGLISH).getFormatsByArgumentIndex());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de"})
    void hasAWordForEveryConstantThePageNames(String language) {
        Texts texts = new Texts(Locale.forLanguageTag(language), GalleryPane.ZONE);

        Stream.of(
                        says(texts, "item", VisualItem.values()),
                        says(texts, "fault", FaultKind.values()),
                        says(texts, "likelihood", Likelihood.values()),
                        says(texts, "notice", NoticeAction.values()),
                        says(texts, "slot.word", SlotState.values()),
                        says(
                                texts,
                                "next",
                                Arrays.stream(Prompt.values())
                                        .filter(p -> p != Prompt.NONE)
                                        .toArray(Prompt[]::new)),
                        says(
                                texts,
                                "tag",
                                Arrays.stream(TagPrint.values())
                                        .filter(p -> p != TagPrint.NOT_NEEDED)
                                        .toArray(TagPrint[]::new)))
                .flatMap(s -> s)
                .forEach(text -> assertThat(text).isNotBlank());
    }

    private static Stream<String> says(Texts texts, String prefix, Enum<?>... constants) {
        return Arrays.stream(constants).map(constant -> texts.say(prefix, constant));
    }
}
