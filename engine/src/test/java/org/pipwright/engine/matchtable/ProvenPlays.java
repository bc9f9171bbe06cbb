package org.pipwright.engine.matchtable;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.pipwright.engine.bearoff.SideIndex;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Roll;

/** Works out what {@link EndingPlays} reads: the results of rolls that none other is proved to be as good as. */
final class ProvenPlays {
    private final SideIndex index;
    private final int[][][] results;
    private final double[] means;
    private final EndingOrder order;
    private final PlayGenerator generator = new PlayGenerator();

    ProvenPlays(SideIndex index) {
        this.index = index;
        results = new int[index.size()][][];
        means = new double[index.size()];
        order = new EndingOrder(this, index.size());
    }

    EndingOrder order() {
        return order;
    }

    /** By the index of the roll, the results that may be best, none of them twice. */
    int[][] of(int arrangement) {
        if (results[arrangement] == null) {
            results[arrangement] = find(arrangement);
        }
        return results[arrangement];
    }

    /** Mean rolls that a side needs which wants to need few in the mean. */
    double mean(int arrangement) {
        if (arrangement == 0) {
            return 0;
        }
        of(arrangement);
        return means[arrangement];
    }

    private int[][] find(int arrangement) {
        int[] planes = new int[Planes.STRIDE];
        index.write(arrangement, planes, 0);
        int[][] found = new int[Roll.COUNT][];
        double mean = 1;
        for (Roll roll : Roll.all()) {
            int count = generator.generate(planes, 0, roll.high(), roll.low());
            int[] all = new int[count];
            for (int i = 0; i < count; i++) {
                all[i] = index.of(generator.results(), i * Planes.STRIDE);
            }
            found[roll.index()] = best(all);
            mean += roll.probability()
                    * Arrays.stream(found[roll.index()])
                            .mapToDouble(this::mean)
                            .min()
                            .orElseThrow();
        }
        means[arrangement] = mean;
        return found;
    }

    /** Leaves out what another result beats or equals. */
    private int[] best(int[] all) {
        int count = 0;
        for (int result : all) {
            int kept = 0;
            boolean beaten = false;
            for (int i = 0; i < count && !beaten; i++) {
                beaten = order.atLeast(all[i], result);
            }
            for (int i = 0; i < count && !beaten; i++) {
                if (!order.atLeast(result, all[i])) {
                    all[kept++] = all[i];
                }
            }
            if (!beaten) {
                all[kept] = result;
                count = kept + 1;
            }
        }
        int[] best = Arrays.copyOf(all, count);
        Arrays.sort(best);
        return best;
    }

    /** The file that comes with the program. */
    byte[] file() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(bytes);
        for (int arrangement = 1; arrangement < index.size(); arrangement++) {
            write(of(arrangement), out);
        }
        return bytes.toByteArray();
    }

    /** Rolls that leave the same together. */
    private static void write(int[][] byRoll, DataOutputStream out) throws IOException {
        List<int[]> distinct = new ArrayList<>();
        int[] ways = new int[Roll.COUNT];
        for (Roll roll : Roll.all()) {
            int[] results = byRoll[roll.index()];
            int place = 0;
            while (place < distinct.size() && !Arrays.equals(distinct.get(place), results)) {
                place++;
            }
            if (place == distinct.size()) {
                distinct.add(results);
            }
            ways[place] += roll.ways();
        }
        int sure = (int) distinct.stream().filter(each -> each.length == 1).count();
        out.writeByte(sure);
        out.writeByte(distinct.size() - sure);
        for (int i = 0; i < distinct.size(); i++) {
            if (distinct.get(i).length == 1) {
                out.writeByte(ways[i]);
                out.writeShort(distinct.get(i)[0]);
            }
        }
        for (int i = 0; i < distinct.size(); i++) {
            int[] choice = distinct.get(i);
            if (choice.length > 1) {
                out.writeByte(ways[i]);
                out.writeByte(choice.length);
                for (int result : choice) {
                    out.writeShort(result);
                }
            }
        }
    }
}
