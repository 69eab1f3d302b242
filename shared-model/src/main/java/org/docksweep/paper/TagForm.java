package org.docksweep.paper;

/** Forms of the repair tag. */
public enum TagForm {
    /** A5 landscape, 210 x 148 mm. */
    A5_LANDSCAPE(210, 148),
    /** Label, 100 x 150 mm. */
    LABEL_100_X_150(100, 150);

    private final int widthMm;
    private final int heightMm;

    TagForm(int widthMm, int heightMm) {
        this.widthMm = widthMm;
        this.heightMm = heightMm;
    }

    /**
     * Width of the form.
     *
     * @return millimetres
     */
    public int widthMm() {
        return widthMm;
    }

    /**
     * Height of the form.
     *
     * @return millimetres
     */
    public int heightMm() {
        return heightMm;
    }
}
