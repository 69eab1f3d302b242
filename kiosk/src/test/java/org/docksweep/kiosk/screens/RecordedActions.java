package org.docksweep.kiosk.screens;

import java.util.Set;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.docksweep.fleet.VisualItem;
import org.docksweep.kiosk.dock.DockActions;
import org.docksweep.kiosk.dock.DockState.NoticeAction;
import org.docksweep.kiosk.printing.PaperView;

/** Writes down what the window asks of the dock, in order. */
final class RecordedActions implements DockActions {
    private static final long LONGEST_WAIT_S = 10;

    private final BlockingQueue<String> heard = new LinkedBlockingQueue<>();

    /** The next action, or {@code nothing} after a bounded wait. */
    String next() throws InterruptedException {
        String action = heard.poll(LONGEST_WAIT_S, TimeUnit.SECONDS);
        return action == null ? "nothing" : action;
    }

    boolean quiet() {
        return heard.isEmpty();
    }

    @Override
    public void scan(String text) {
        heard.add("scan " + text);
    }

    @Override
    public void lookedOver(Set<VisualItem> damage) {
        heard.add("lookedOver " + damage);
    }

    @Override
    public void plugged() {
        heard.add("plugged");
    }

    @Override
    public void stop() {
        heard.add("stop");
    }

    @Override
    public void sweepAgain() {
        heard.add("sweepAgain");
    }

    @Override
    public void holdForPerson() {
        heard.add("holdForPerson");
    }

    @Override
    public void viewTag(Consumer<PaperView> shown) {
        heard.add("viewTag");
        shown.accept(SamplePaper.tag());
    }

    @Override
    public void viewSheet(Consumer<PaperView> shown) {
        heard.add("viewSheet");
    }

    @Override
    public void printTag() {
        heard.add("printTag");
    }

    @Override
    public void notice(NoticeAction action) {
        heard.add("notice " + action);
    }

    @Override
    public void register(String modelCode) {
        heard.add("register " + modelCode);
    }

    @Override
    public void closeList() {
        heard.add("closeList");
    }
}
