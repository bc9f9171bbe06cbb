package org.pipwright.training.cuda;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Function;
import org.pipwright.engine.duel.DuelSettings;
import org.pipwright.engine.duel.Tally;
import org.pipwright.training.device.DeviceAgreement;
import org.pipwright.training.device.DeviceDuel;
import org.pipwright.training.device.DevicePlayer;

/** A duel between two players, of whom the accelerator answers for those whose nets it can hold. */
final class DuelOnDevice {
    private static final int MAX_GAMES = 16384;

    private final List<DevicePlayer> players;
    private final List<DuelSide> sides = new ArrayList<>();
    private final Accelerator accelerator;

    DuelOnDevice(Function<Recipe, Accelerator> accelerators, DevicePlayer a, DevicePlayer b) {
        players = List.of(a, b);
        List<DevicePlayer> fitting = players.stream().filter(DuelSide::fits).toList();
        List<ResidualShape> shapes =
                fitting.stream().map(DuelSide::net).map(GameNets::shape).toList();
        ResidualShape any = shapes.isEmpty() ? ResidualShape.parse("128x1") : shapes.get(0);
        accelerator = accelerators.apply(Recipe.ofGames(any, shapes.size() < 2 ? any : shapes.get(1), 1, 0));
        for (DevicePlayer player : players) {
            sides.add(side(player));
        }
    }

    private DuelSide side(DevicePlayer player) {
        if (!DuelSide.fits(player)) {
            return new DuelSide.OnThreads(player.players());
        }
        GameNets.add(DuelSide.net(player), accelerator);
        long before = sides.stream()
                .filter(side -> side instanceof DuelSide.OnAccelerator)
                .count();
        return new DuelSide.OnAccelerator((int) before);
    }

    DeviceDuel play(DuelSettings settings, Consumer<Tally> progress, BooleanSupplier stop) {
        int games = (int) Math.min(MAX_GAMES, 2 * settings.pairs());
        LockstepDuel duel = new LockstepDuel(games, accelerator);
        Tally tally = duel.play(sides.get(0), sides.get(1), settings, progress, stop);
        return new DeviceDuel(accelerator.description(), tally, agreement(duel, 0), agreement(duel, 1));
    }

    private DeviceAgreement agreement(LockstepDuel duel, int side) {
        return sides.get(side) instanceof DuelSide.OnAccelerator
                ? duel.decisions(side).compare(DuelSide.net(players.get(side)))
                : DeviceAgreement.ON_THREADS;
    }
}
