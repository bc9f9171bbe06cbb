package org.pipwright.bench.calibration;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.util.List;
import org.pipwright.training.device.DeviceAgreement;

/** All figures for programs; chances from 0 to 1. */
final class CalibrationJson {
    private CalibrationJson() {}

    static String of(Calibration calibration) throws IOException {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text).useDefaultPrettyPrinter()) {
            json.writeStartObject();
            json.writeStringField("player", calibration.who());
            json.writeNumberField("seed", calibration.seed());
            json.writeNumberField("every", calibration.every());
            json.writeNumberField("games", calibration.games());
            json.writeNumberField("positions", calibration.positions());
            writeAgreement(json, calibration);
            json.writeArrayFieldStart("chances");
            for (Curve curve : calibration.curves()) {
                json.writeStartObject();
                json.writeStringField("chance", curve.chance().words());
                json.writeNumberField("meanDistance", curve.meanDistance());
                json.writeFieldName("all");
                write(json, curve.all());
                write(json, "bins", curve.bins());
                write(json, "tenths", curve.tenths());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeEndObject();
        }
        return text + "\n";
    }

    private static void writeAgreement(JsonGenerator json, Calibration calibration) throws IOException {
        if (calibration.agreement().isPresent()) {
            DeviceAgreement agreement = calibration.agreement().get();
            json.writeObjectFieldStart("agreement");
            json.writeNumberField("compared", agreement.compared());
            json.writeNumberField("differing", agreement.differing());
            json.writeNumberField("cost", agreement.cost());
            json.writeEndObject();
        }
    }

    private static void write(JsonGenerator json, String name, List<Bin> bins) throws IOException {
        json.writeArrayFieldStart(name);
        for (Bin bin : bins) {
            write(json, bin);
        }
        json.writeEndArray();
    }

    /** An empty range has no means. */
    private static void write(JsonGenerator json, Bin bin) throws IOException {
        json.writeStartObject();
        json.writeNumberField("low", bin.low());
        json.writeNumberField("high", bin.high());
        json.writeNumberField("positions", bin.count());
        if (bin.count() > 0) {
            json.writeNumberField("predicted", bin.predicted());
            json.writeNumberField("observed", bin.observed());
            json.writeNumberField("difference", bin.difference());
            json.writeNumberField("error", bin.error());
        }
        json.writeEndObject();
    }
}
