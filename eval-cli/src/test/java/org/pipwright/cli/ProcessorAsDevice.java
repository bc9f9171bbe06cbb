package org.pipwright.cli;

import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.pipwright.engine.duel.Duel;
import org.pipwright.engine.duel.DuelSettings;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.duel.Tally;
import org.pipwright.training.device.DeviceAgreement;
import org.pipwright.training.device.DeviceDuel;
import org.pipwright.training.device.DeviceGames;
import org.pipwright.training.device.DevicePlayer;
import org.pipwright.training.device.DeviceRollouts;
import org.pipwright.training.device.DeviceSelfPlay;
import org.pipwright.training.device.RolloutRules;
import org.pipwright.training.device.SelfPlayRules;
import org.pipwright.training.device.SelfPlayedGame;

/** Stands for a card where there is none: the processor plays. */
public final class ProcessorAsDevice implements DeviceGames {
    static final DeviceAgreement AGREEMENT = new DeviceAgreement(true, 2000, 5, 0.00125);

    @Override
    public String device() {
        return "cuda";
    }

    @Override
    public DeviceDuel duel(
            DevicePlayer a,
            DevicePlayer b,
            DuelSettings settings,
            int threads,
            Consumer<Tally> progress,
            BooleanSupplier stop) {
        Tally tally =
                new Duel(Entrant.of("a", a.players()), Entrant.of("b", b.players()), settings, progress).run(threads);
        return new DeviceDuel("a card, CUDA 13.0", tally, agreement(a), agreement(b));
    }

    @Override
    public DeviceRollouts rollouts(RolloutRules rules, int threads) {
        throw new UnsupportedOperationException("no command rolls out on a device");
    }

    @Override
    public DeviceSelfPlay selfPlay(SelfPlayRules rules, int threads, Predicate<SelfPlayedGame> games) {
        throw new UnsupportedOperationException("no command lets a net play against itself on a device");
    }

    private static DeviceAgreement agreement(DevicePlayer player) {
        return player.net().isPresent() ? AGREEMENT : DeviceAgreement.ON_THREADS;
    }
}
