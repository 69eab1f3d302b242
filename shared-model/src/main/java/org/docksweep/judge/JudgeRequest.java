package org.docksweep.judge;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Require;
import org.docksweep.gate.Baseline;
import org.docksweep.gate.LimitSet;
import org.docksweep.gate.PointReference;
import org.docksweep.rigcal.RigRepeatability;
import org.docksweep.suspect.Priors;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.CurveCorrection;

/**
 * Everything a judgement depends on.
 *
 * @param book models of the fleet; other models are tried when the curve does not fit this one
 * @param model model the label stands for
 * @param captures one capture per test point swept so far, in the order of the model's test points; none where a stored curve is
 *     judged again
 * @param correction calibration of the rig
 * @param references references of all models of the fleet
 * @param baselines baselines of this cabinet, may be empty
 * @param limits limits
 * @param priors what the house learned from its repairs; {@link Priors#USUAL} for nothing
 * @param repeatability what the rig's study found; {@link RigRepeatability#UNKNOWN} without one
 * @param microphoneDoubt why the microphone is not proved, and what to do; its sound then proves nothing. Empty when it is
 */
public record JudgeRequest(
        ModelBook book,
        CabinetModel model,
        List<PointCapture> captures,
        CurveCorrection correction,
        List<PointReference> references,
        List<Baseline> baselines,
        LimitSet limits,
        Priors priors,
        RigRepeatability repeatability,
        Optional<Reason> microphoneDoubt) {

    /**
     * A judgement with a proved microphone.
     *
     * @param book models of the fleet
     * @param model model the label stands for
     * @param captures one capture per test point swept so far
     * @param correction calibration of the rig
     * @param references references of all models of the fleet
     * @param baselines baselines of this cabinet, may be empty
     * @param limits limits
     * @param priors what the house learned from its repairs
     * @param repeatability what the rig's study found
     */
    public JudgeRequest(
            ModelBook book,
            CabinetModel model,
            List<PointCapture> captures,
            CurveCorrection correction,
            List<PointReference> references,
            List<Baseline> baselines,
            LimitSet limits,
            Priors priors,
            RigRepeatability repeatability) {
        this(book, model, captures, correction, references, baselines, limits, priors, repeatability, Optional.empty());
    }

    /**
     * A judgement on a rig without a repeatability study.
     *
     * @param book models of the fleet
     * @param model model the label stands for
     * @param captures one capture per test point swept so far
     * @param correction calibration of the rig
     * @param references references of all models of the fleet
     * @param baselines baselines of this cabinet, may be empty
     * @param limits limits
     * @param priors what the house learned from its repairs
     */
    public JudgeRequest(
            ModelBook book,
            CabinetModel model,
            List<PointCapture> captures,
            CurveCorrection correction,
            List<PointReference> references,
            List<Baseline> baselines,
            LimitSet limits,
            Priors priors) {
        this(book, model, captures, correction, references, baselines, limits, priors, RigRepeatability.UNKNOWN);
    }

    /**
     * A judgement with the usual priors.
     *
     * @param book models of the fleet
     * @param model model the label stands for
     * @param captures one capture per test point swept so far
     * @param correction calibration of the rig
     * @param references references of all models of the fleet
     * @param baselines baselines of this cabinet, may be empty
     * @param limits limits
     */
    public JudgeRequest(
            ModelBook book,
            CabinetModel model,
            List<PointCapture> captures,
            CurveCorrection correction,
            List<PointReference> references,
            List<Baseline> baselines,
            LimitSet limits) {
        this(book, model, captures, correction, references, baselines, limits, Priors.USUAL);
    }

    /**
     * A capture of one test point.
     *
     * @param testPointCode test point of the model
     * @param capture the capture
     */
    public record PointCapture(String testPointCode, Capture capture) {}

    public JudgeRequest {
        Objects.requireNonNull(book, "book");
        Objects.requireNonNull(model, "model");
        captures = Require.copy("captures", captures);
        captures.forEach(c -> model.testPoint(c.testPointCode()));
        Objects.requireNonNull(correction, "correction");
        references = Require.copy("references", references);
        baselines = Require.copy("baselines", baselines);
        Objects.requireNonNull(limits, "limits");
        Objects.requireNonNull(priors, "priors");
        Objects.requireNonNull(repeatability, "repeatability");
        Objects.requireNonNull(microphoneDoubt, "microphoneDoubt");
    }
}
