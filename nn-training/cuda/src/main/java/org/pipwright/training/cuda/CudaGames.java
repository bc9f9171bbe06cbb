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

/** Plays games on an NVIDIA card. */
public final class CudaGames implements DeviceGames {
    /** Makes what plays, without looking for a card yet. */
    public CudaGames() {}

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
        CudaTrainer.take(threads);
        return new DuelOnDevice(CudaAccelerator::new, a, b).play(settings, progress, stop);
    }

    @Override
    public DeviceRollouts rollouts(RolloutRules rules, int threads) {
        CudaTrainer.take(threads);
        return new LockstepRollouts(CudaAccelerator::new, rules);
    }

    @Override
    public DeviceSelfPlay selfPlay(SelfPlayRules rules, int threads, Predicate<SelfPlayedGame> games) {
        CudaTrainer.take(threads);
        return LockstepSelfPlay.play(CudaAccelerator::new, rules, games);
    }
}
