package org.pipwright.cli.duel;

import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;

/** Progress as a bar with rate and time to go. */
final class BarProgress implements Progress {
    private static final int UPDATE_MILLIS = 250;

    private final ProgressBar bar;

    BarProgress(long all, String what) {
        bar = new ProgressBarBuilder()
                .setTaskName(what)
                .setInitialMax(all)
                .setStyle(ProgressBarStyle.ASCII)
                .setUpdateIntervalMillis(UPDATE_MILLIS)
                .showSpeed()
                .clearDisplayOnFinish()
                .build();
    }

    @Override
    public void reached(long games, String note) {
        bar.stepTo(games);
        bar.setExtraMessage(" " + note);
    }

    @Override
    public void done() {
        bar.close();
    }
}
