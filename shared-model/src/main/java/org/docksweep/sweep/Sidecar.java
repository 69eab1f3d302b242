package org.docksweep.sweep;

import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.TestPointKind;
import tools.jackson.core.JacksonException;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Header of a capture to and from the JSON of its sidecar, field by field so that every error names its field. */
final class Sidecar {
    private static final String FORMAT = "docksweep-recording";
    private static final int VERSION = 1;
    private static final Set<String> FIELDS = Set.of(
            "format",
            "version",
            "capturedAt",
            "rigId",
            "testPointKind",
            "sampleRateHz",
            "channels",
            "sweep",
            "preRollS",
            "tailS",
            "repeats",
            "ambientCelsius");
    private static final Set<String> SWEEP_FIELDS =
            Set.of("startHz", "stopHz", "rateConstantS", "fadeInS", "fadeOutS", "level");
    private static final Set<String> CHANNEL_FIELDS = Set.of("role", "unitsPerFullScale");
    private static final Set<String> LEVEL_FIELDS = Set.of("frequencyHz", "voltageVrms");

    /** More corners than anybody draws; bounds the work a sidecar can ask for. */
    private static final int MOST_LEVEL_POINTS = 1000;

    private static final JsonMapper MAPPER = JsonMapper.builder(JsonFactory.builder()
                    .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                    .build())
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .enable(SerializationFeature.INDENT_OUTPUT)
            .build();

    private final String name;

    private Sidecar(String name) {
        this.name = name;
    }

    static byte[] encode(CaptureHeader header) {
        SweepPlan plan = header.plan();
        SweepSignal signal = plan.signal();
        ObjectNode root = MAPPER.createObjectNode();
        root.put("format", FORMAT).put("version", VERSION);
        root.put("capturedAt", header.capturedAt().toString()).put("rigId", header.rigId());
        root.put("testPointKind", header.testPointKind().name()).put("sampleRateHz", signal.sampleRateHz());
        ArrayNode channels = root.putArray("channels");
        for (CaptureChannel channel : header.channels()) {
            channels.addObject()
                    .put("role", channel.role().name())
                    .put("unitsPerFullScale", channel.unitsPerFullScale());
        }
        root.put("preRollS", plan.preRollS()).put("tailS", plan.tailS()).put("repeats", plan.repeats());
        ObjectNode sweep = root.putObject("sweep");
        sweep.put("startHz", signal.startHz()).put("stopHz", signal.stopHz());
        sweep.put("rateConstantS", signal.rateConstantS());
        sweep.put("fadeInS", signal.fadeInS()).put("fadeOutS", signal.fadeOutS());
        ArrayNode level = sweep.putArray("level");
        for (LevelMask.Point point : signal.level().points()) {
            level.addObject().put("frequencyHz", point.frequencyHz()).put("voltageVrms", point.voltageVrms());
        }
        if (header.ambientCelsius() != null) {
            root.put("ambientCelsius", header.ambientCelsius());
        }
        return MAPPER.writeValueAsBytes(root);
    }

    static CaptureHeader decode(String name, byte[] json) throws RecordingException {
        return new Sidecar(name).decode(json);
    }

    private CaptureHeader decode(byte[] json) throws RecordingException {
        JsonNode root;
        try {
            root = MAPPER.readTree(json);
        } catch (JacksonException e) {
            throw wrong("content", "must be one JSON object in UTF-8, but: " + e.getOriginalMessage());
        }
        object("content", root, FIELDS);
        if (!FORMAT.equals(text(root, "", "format"))) {
            throw wrong("format", "must be \"" + FORMAT + "\", but is \"" + text(root, "", "format") + "\"");
        }
        if (whole(root, "", "version") != VERSION) {
            throw wrong("version", "must be " + VERSION + ", but is " + whole(root, "", "version"));
        }
        Instant capturedAt = instant(root);
        List<CaptureChannel> channels = channels(root);
        SweepSignal signal = sweep(root);
        try {
            SweepPlan plan = new SweepPlan(
                    signal, number(root, "", "preRollS"), number(root, "", "tailS"), whole(root, "", "repeats"));
            JsonNode ambient = root.get("ambientCelsius");
            Double ambientCelsius = ambient == null || ambient.isNull() ? null : number(root, "", "ambientCelsius");
            return new CaptureHeader(
                    capturedAt,
                    text(root, "", "rigId"),
                    constant(TestPointKind.class, root, "", "testPointKind"),
                    channels,
                    plan,
                    ambientCelsius);
        } catch (IllegalArgumentException e) {
            throw wrong("content", e.getMessage());
        }
    }

    private Instant instant(JsonNode root) throws RecordingException {
        String value = text(root, "", "capturedAt");
        try {
            return Instant.parse(value);
        } catch (DateTimeException e) {
            throw wrong(
                    "capturedAt", "must be a UTC time like 2026-05-01T01:23:45Z, but is \"" + shorten(value) + "\"");
        }
    }

    private List<CaptureChannel> channels(JsonNode root) throws RecordingException {
        JsonNode array = array(root, "", "channels", ChannelRole.values().length);
        List<CaptureChannel> channels = new ArrayList<>();
        for (int i = 0; i < array.size(); i++) {
            String path = "channels[" + i + "].";
            JsonNode channel = array.get(i);
            object(path, channel, CHANNEL_FIELDS);
            ChannelRole role = constant(ChannelRole.class, channel, path, "role");
            double unitsPerFullScale = number(channel, path, "unitsPerFullScale");
            try {
                channels.add(new CaptureChannel(role, unitsPerFullScale));
            } catch (IllegalArgumentException e) {
                throw wrong(path + "unitsPerFullScale", e.getMessage());
            }
        }
        return channels;
    }

    private SweepSignal sweep(JsonNode root) throws RecordingException {
        JsonNode sweep = root.get("sweep");
        object("sweep", sweep, SWEEP_FIELDS);
        JsonNode array = array(sweep, "sweep.", "level", MOST_LEVEL_POINTS);
        double[][] corners = new double[array.size()][];
        for (int i = 0; i < array.size(); i++) {
            String path = "sweep.level[" + i + "].";
            object(path, array.get(i), LEVEL_FIELDS);
            corners[i] =
                    new double[] {number(array.get(i), path, "frequencyHz"), number(array.get(i), path, "voltageVrms")};
        }
        double startHz = number(sweep, "sweep.", "startHz");
        double stopHz = number(sweep, "sweep.", "stopHz");
        double rateConstantS = number(sweep, "sweep.", "rateConstantS");
        double fadeInS = number(sweep, "sweep.", "fadeInS");
        double fadeOutS = number(sweep, "sweep.", "fadeOutS");
        int sampleRateHz = whole(root, "", "sampleRateHz");
        try {
            LevelMask level = new LevelMask(Arrays.stream(corners)
                    .map(corner -> new LevelMask.Point(corner[0], corner[1]))
                    .toList());
            return new SweepSignal(startHz, stopHz, rateConstantS, sampleRateHz, level, fadeInS, fadeOutS);
        } catch (IllegalArgumentException e) {
            throw wrong("sweep", e.getMessage());
        }
    }

    private void object(String path, JsonNode node, Set<String> allowed) throws RecordingException {
        if (node == null || !node.isObject()) {
            throw wrong(path, "must be a JSON object, but is " + (node == null ? "missing" : "something else"));
        }
        for (String field : node.propertyNames()) {
            if (!allowed.contains(field)) {
                throw wrong(
                        (path.endsWith(".") ? path : path + " ") + shorten(field),
                        "is not a field of this format; the fields are " + new java.util.TreeSet<>(allowed));
            }
        }
    }

    private JsonNode array(JsonNode parent, String path, String field, int most) throws RecordingException {
        JsonNode node = parent.get(field);
        if (node == null || !node.isArray() || node.isEmpty() || node.size() > most) {
            throw wrong(path + field, "must be a list of 1 to " + most + " entries");
        }
        return node;
    }

    private String text(JsonNode parent, String path, String field) throws RecordingException {
        JsonNode node = parent.get(field);
        if (node == null || !node.isString() || node.stringValue().isBlank()) {
            throw wrong(path + field, "must be a text that is not empty" + (node == null ? ", but is missing" : ""));
        }
        return node.stringValue();
    }

    private double number(JsonNode parent, String path, String field) throws RecordingException {
        JsonNode node = parent.get(field);
        if (node == null || !node.isNumber() || !Double.isFinite(node.doubleValue())) {
            throw wrong(path + field, "must be a number" + (node == null ? ", but is missing" : ""));
        }
        return node.doubleValue();
    }

    private int whole(JsonNode parent, String path, String field) throws RecordingException {
        double value = number(parent, path, field);
        if (value != Math.rint(value) || Math.abs(value) > Integer.MAX_VALUE) {
            throw wrong(path + field, "must be a whole number, but is " + value);
        }
        return (int) value;
    }

    private <E extends Enum<E>> E constant(Class<E> type, JsonNode parent, String path, String field)
            throws RecordingException {
        String value = text(parent, path, field);
        for (E constant : type.getEnumConstants()) {
            if (constant.name().equals(value)) {
                return constant;
            }
        }
        throw wrong(
                path + field,
                "must be one of " + Arrays.toString(type.getEnumConstants()) + ", but is \"" + shorten(value) + "\"");
    }

    private static String shorten(String text) {
        String printable = text.replaceAll("\\p{Cntrl}", "?");
        return printable.length() <= 40 ? printable : printable.substring(0, 39) + "\u2026";
    }

    private RecordingException wrong(String field, String problem) {
        return new RecordingException(
                name, field, problem, "Correct the sidecar; docs/recording-format.md has the fields");
    }
}
