package org.pipwright.training.settings;

import java.util.List;
import org.pipwright.engine.fuzz.Seeds;
import org.pipwright.engine.fuzz.Target;

/** Settings files of training. */
final class SettingsTarget implements Target {
    @Override
    public List<byte[]> seeds() {
        return Seeds.of(
                TrainingSettings.defaults().toText(),
                "games = 12 # few\ncontact.hidden=128,32\nrate.first = 1e-3\n",
                "keep = 0.5\r\nseed = -7\r\n");
    }

    @Override
    public boolean read(byte[] data) {
        TrainingSettings settings;
        try {
            settings = TrainingSettings.parse(Seeds.text(data), TrainingSettings.defaults());
        } catch (InvalidSettingsException e) {
            requireShort(e.getMessage());
            return false;
        }
        Seeds.requireSame(settings, TrainingSettings.parse(settings.toText(), TrainingSettings.defaults()));
        settings.networks();
        settings.learning();
        settings.limits();
        return true;
    }

    private static void requireShort(String message) {
        if (message.length() > 500 || message.contains("\n")) {
            throw new IllegalStateException("a long message: " + message);
        }
    }
}
