package org.pipwright.cli.desk;

import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.pipwright.engine.fuzz.Seeds;
import org.pipwright.engine.fuzz.Target;

/** Addresses of the desk's board: whatever they say, a page comes of it, and its own address brings it back. */
final class AddressTarget implements Target {
    @Override
    public List<byte[]> seeds() {
        return Seeds.of(
                "",
                "roll=3-1&play=8/5 6/5&ahead=1&home=left&pips=hidden",
                "position=5@6 3@8 5@13 2@24 / 5@6 3@8 5@13 2@24&for=match&away=3,5&cube=2&owner=me",
                "for=money&no-jacoby=yes&beavers=yes&cube=4&owner=centre&guesses=3: roll; 1: double, take",
                "text=1@3 14@off / 1@2 14@off&roll=21&for=points&guesses=2: 3/off",
                "for=match&away=1,3&crawford=yes&pick=MINE_6");
    }

    @Override
    public boolean read(byte[] data) {
        Map<String, String> fields = new HashMap<>();
        for (String field : Seeds.text(data).split("&")) {
            int equals = field.indexOf('=');
            if (equals > 0) {
                fields.put(field.substring(0, equals), field.substring(equals + 1));
            }
        }
        SettingForm form = SettingForm.parse(fields::get);
        Setting setting = form.setting();
        Seeds.requireSame(setting.query(), again(setting).query());
        setting.question().ifPresent(question -> {
            Guesses guesses = Guesses.parse(fields.get("guesses"), question);
            Seeds.requireSame(guesses, Guesses.parse(guesses.text(), question));
            setting.swapped();
        });
        return form.errors().isEmpty();
    }

    /** What the setting's own address says. */
    private static Setting again(Setting setting) {
        Map<String, String> fields = new HashMap<>();
        for (String field : setting.query().split("&")) {
            String[] halves = field.split("=", 2);
            if (halves.length == 2) {
                fields.put(halves[0], URLDecoder.decode(halves[1], StandardCharsets.UTF_8));
            }
        }
        return SettingForm.parse(fields::get).setting();
    }
}
