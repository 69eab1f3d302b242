package org.docksweep.service;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadInfo;
import java.lang.management.ThreadMXBean;
import java.util.Locale;

/**
 * Processor time used up to a moment, by who used it. Unlike time by the clock it says something on a busy machine too.
 *
 * @param callerMs threads that send and wait for answers, and those of their HTTP client
 * @param serviceMs all other Java threads: those that answer, and what the service does beside them
 * @param machineMs the rest of this process: compiler, collector, and threads that have ended
 * @param databaseMs of a database in processes of its own, as far as they still run; otherwise it is in the others
 */
record ProcessorTime(double callerMs, double serviceMs, double machineMs, double databaseMs) {
    static final ProcessorTime NONE = new ProcessorTime(0, 0, 0, 0);

    static ProcessorTime now() {
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        double caller = 0;
        double service = 0;
        for (ThreadInfo thread : threads.getThreadInfo(threads.getAllThreadIds())) {
            double ms = thread == null ? 0 : Math.max(0, threads.getThreadCpuTime(thread.getThreadId())) / 1e6;
            if (thread != null && isCaller(thread.getThreadName())) {
                caller += ms;
            } else {
                service += ms;
            }
        }
        double all = ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
                        .getProcessCpuTime()
                / 1e6;
        double database =
                Engine.ofThisRun() == Engine.H2 ? 0 : PostgresServer.required().processorMs();
        return new ProcessorTime(caller, service, all - caller - service, database);
    }

    private static boolean isCaller(String thread) {
        return thread.equals("main") || thread.startsWith("HttpClient-") || thread.startsWith("pool-");
    }

    ProcessorTime since(ProcessorTime before) {
        return new ProcessorTime(
                callerMs - before.callerMs,
                serviceMs - before.serviceMs,
                machineMs - before.machineMs,
                databaseMs - before.databaseMs);
    }

    ProcessorTime and(ProcessorTime more) {
        return new ProcessorTime(
                callerMs + more.callerMs,
                serviceMs + more.serviceMs,
                machineMs + more.machineMs,
                databaseMs + more.databaseMs);
    }

    /** Of this process. */
    double ms() {
        return callerMs + serviceMs + machineMs;
    }

    /** Shared out to as many check-ins. */
    String of(int checkIns) {
        return String.format(
                Locale.ROOT,
                "%.2f ms (caller %.2f, service %.2f, compiler and collector %.2f), database's own processes %.2f ms",
                ms() / checkIns,
                callerMs / checkIns,
                serviceMs / checkIns,
                machineMs / checkIns,
                databaseMs / checkIns);
    }
}
