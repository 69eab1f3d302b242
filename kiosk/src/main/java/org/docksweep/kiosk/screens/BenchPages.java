package org.docksweep.kiosk.screens;

import java.util.List;
import javax.swing.SwingUtilities;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.kiosk.bench.Bench;

/** Makes the bench page of a window. */
public final class BenchPages extends PageMaker {
    private final Bench bench;
    private final List<CabinetModel> models;

    /**
     * Makes the maker.
     *
     * @param bench the bench it shows
     * @param models all models of the house
     */
    public BenchPages(Bench bench, List<CabinetModel> models) {
        this.bench = bench;
        this.models = List.copyOf(models);
    }

    @Override
    Page make(Sizes sizes, Texts texts) {
        BenchPage page = new BenchPage(bench, bench.state(), models, sizes, texts);
        bench.addListener(state -> SwingUtilities.invokeLater(() -> page.show(state)));
        return page;
    }
}
