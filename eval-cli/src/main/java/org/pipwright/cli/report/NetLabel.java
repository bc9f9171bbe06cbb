package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;

/**
 * Which net judged.
 *
 * @param name name or path as asked for
 * @param sha256 checksum of its weights, in hexadecimal
 */
public record NetLabel(String name, String sha256) {
    /**
     * The label of a loaded model.
     *
     * @param name name or path as asked for
     * @param model the model, read from a file or resource
     * @return the label
     */
    public static NetLabel of(String name, Model model) {
        return new NetLabel(name, model.notes().get(ModelFile.SHA256));
    }

    void write(JsonGenerator json) throws IOException {
        json.writeObjectFieldStart("net");
        json.writeStringField("name", name);
        json.writeStringField("sha256", sha256);
        json.writeEndObject();
    }
}
