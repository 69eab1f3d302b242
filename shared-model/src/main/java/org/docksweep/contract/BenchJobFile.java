package org.docksweep.contract;

import java.util.List;
import org.docksweep.fleet.ProcedurePurpose;

/**
 * Everything a bench needs to see of a job. Lists are oldest first.
 *
 * @param job the job
 * @param cabinet the cabinet with its drivers as they are now
 * @param cards procedures that its suspects suggest, most probable first
 * @param actions what was done with the job
 * @param findings what was found
 * @param exchanges parts exchanged
 * @param ticks steps ticked and ticks taken back
 * @param proofs sweeps of the bench proof
 * @param proof whether it may be signed off
 */
public record BenchJobFile(
        BenchJobBody job,
        CabinetBody cabinet,
        List<Card> cards,
        List<BenchActionBody> actions,
        List<FindingBody> findings,
        List<PartExchangeBody> exchanges,
        List<StepTickBody> ticks,
        List<ProofSweepBody> proofs,
        ProofState proof) {

    /**
     * A procedure suggested.
     *
     * @param purpose its purpose
     * @param positionCode driver position, or null for the cabinet
     * @param driverModelCode driver model there, or null
     * @param probability share of belief of the suspects that suggest it, 0 to 1
     */
    public record Card(ProcedurePurpose purpose, String positionCode, String driverModelCode, double probability) {}
}
