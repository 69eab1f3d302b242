package org.docksweep.sweep;

import java.io.IOException;

/** A recording cannot be read or written. The message names the file, the field, what was expected and what to do. */
public class RecordingException extends IOException {
    private static final long serialVersionUID = 1L;

    private final String file;
    private final String field;

    /**
     * Makes the exception.
     *
     * @param file name of the file
     * @param field the field or part of it that is wrong
     * @param problem what was expected and what was found
     * @param remedy what to do
     */
    public RecordingException(String file, String field, String problem, String remedy) {
        super(file + ": " + field + ": " + problem + ". " + remedy);
        this.file = file;
        this.field = field;
    }

    /**
     * The file.
     *
     * @return its name
     */
    public String file() {
        return file;
    }

    /**
     * The field or part of the file that is wrong.
     *
     * @return its name
     */
    public String field() {
        return field;
    }
}
