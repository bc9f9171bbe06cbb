package org.pipwright.training.cuda;

import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.pipwright.engine.duel.DuelSettings;
import org.pipwright.engine.duel.Tally;
import org.pipwright.training.device.DeviceDuel;
import org.pipwright.training.device.DeviceGames;
import org.pipwright.training.device.DevicePlayer;
import org.pipwright.training.device.DeviceRollouts;
import org.pipwright.training.device.DeviceSelfPlay;
import org.pipwright.training.device.RolloutRules;
import org.pipwright.training.device.SelfPlayRules;
import org.pipwright.training.device.SelfPlayedGame;

/** The device {@code plain}, for trying commands out where there is no card: they do all that they do on one, slowly. */
public final class PlainGames implements DeviceGames {
    @Override
    public String device() {
        return "plain";
    }

    @Override
    public DeviceDuel duel(
            DevicePlayer a,
            DevicePlayer b,
            DuelSettings settings,
            int threads,
            Consumer<Tally> progress,
            BooleanSupplier stop) {
        return new DuelOnDevice(PlainAccelerator::new, a, b).play(settings, progress, stop);
    }

    @Override
    public DeviceRollouts rollouts(RolloutRules rules, int threads) {
        return new LockstepRollouts(PlainAccelerator::new, rules);
    }

    @Override
    public DeviceSelfPlay selfPlay(SelfPlayRules rules, int threads, Predicate<SelfPlayedGame> games) {
        return LockstepSelfPlay.play(PlainAccelerator::new, rules, games);
    }
}
