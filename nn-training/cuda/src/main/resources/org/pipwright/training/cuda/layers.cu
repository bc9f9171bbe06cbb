// Layered networks, which answer but do not learn here: inputs of places, measures and pairs as engine's FeatureSet lists
// them, then layers in single precision, so that answers are the processor's but for the order of sums. Compiled behind
// kernels.cu, whose functions it uses.

#define ON_BOARD 0x03FFFFFE
#define POINTS 0x01FFFFFE
#define BAR 25
#define MAX_WIDTH 1024

// No position has more inputs that are not 0: 15 places a side of 5 each, 10 measures, 15 x 15 pairs.
#define MAX_ACTIVE 400

// Numbers that say a network's shape: measures a side, whether there are pairs, where its weights begin, how many layers it
// has, and the outputs of each.
#define SHAPE 8
#define SHAPE_OUTPUTS 4

// Threads that list inputs: one a place of either side, one a measure of either side, one a place that pairs begin with.
#define LISTING_MEASURES (2 * PLACES)
#define MOST_MEASURES 5
#define LISTING_PAIRS (LISTING_MEASURES + 2 * MOST_MEASURES)
#define LISTING (LISTING_PAIRS + BAR)

__device__ __forceinline__ int heldBy(const int* side) {
    return side[1] | side[2] | side[3];
}

__device__ __forceinline__ int mirror(int places) {
    return (int) (__brev((uint) places) >> 6);
}

// Whether some checker reaches a blot in up to so many steps of one die.
__device__ bool reaches(int from, int die, int steps, int open, int blots) {
    int at = from;
    int seen = 0;
    for (int step = 0; step < steps; step++) {
        at = (at >> die) & open;
        seen |= at;
    }
    return (seen & blots) != 0;
}

__device__ int hitsFree(int occupiedPlaces, int blots, int open) {
    int rolls = 0;
    for (int high = 1; high <= 6; high++) {
        int directHigh = (occupiedPlaces >> high) & blots;
        int afterHigh = (occupiedPlaces >> high) & open;
        for (int low = 1; low < high; low++) {
            int directLow = (occupiedPlaces >> low) & blots;
            int second = (afterHigh >> low) | (((occupiedPlaces >> low) & open) >> high);
            rolls += directHigh != 0 || directLow != 0 || (second & blots) != 0 ? 2 : 0;
        }
        rolls += reaches(occupiedPlaces, high, 4, open, blots) ? 1 : 0;
    }
    return rolls;
}

__device__ int hitsFromBar(int occupiedPlaces, int onBar, int blots, int open) {
    int entry = open & (0x3F << 19);
    int others = occupiedPlaces & POINTS;
    int rolls = 0;
    for (int high = 1; high <= 6; high++) {
        int atHigh = (1 << (BAR - high)) & entry;
        for (int low = 1; low < high; low++) {
            int atLow = (1 << (BAR - low)) & entry;
            int landings = atHigh | atLow;
            if (onBar == 1) {
                landings |= atHigh == 0 ? 0 : (others | atHigh) >> low;
                landings |= atLow == 0 ? 0 : (others | atLow) >> high;
            }
            rolls += (landings & blots) != 0 ? 2 : 0;
        }
        bool entersHitting = (atHigh & blots) != 0;
        bool goesOn = atHigh != 0 && onBar < 4 && reaches(others | atHigh, high, 4 - onBar, open, blots);
        rolls += entersHitting || goesOn ? 1 : 0;
    }
    return rolls;
}

__device__ int hittingRolls(const int* side, const int* other) {
    int held = heldBy(other);
    int blots = mirror(other[0] & ~held) & POINTS;
    int open = POINTS & ~mirror(held);
    int places = occupied(side) & ON_BOARD;
    int onBar = count(side, BAR);
    return onBar == 0 ? hitsFree(places, blots, open) : hitsFromBar(places, onBar, blots, open);
}

__device__ __forceinline__ bool isOpen(int blocked, int distance) {
    return distance > 12 || ((blocked >> (distance - 1)) & 1) == 0;
}

__device__ float freedom(const int* side, const int* other) {
    int back = rearmost(side);
    if (back == 0) {
        return 1;
    }
    uint held = mirror(heldBy(other)) & POINTS;
    int blocked = (int) __brev(held << (32 - back)) & 0xFFF;
    int sum = 0;
    for (int high = 1; high <= 6; high++) {
        bool highOpen = isOpen(blocked, high);
        for (int low = 1; low < high; low++) {
            bool lowOpen = isOpen(blocked, low);
            bool both = (highOpen || lowOpen) && isOpen(blocked, high + low);
            sum += 2 * (both ? high + low : highOpen ? high : lowOpen ? low : 0);
        }
        int steps = 0;
        while (steps < 4 && isOpen(blocked, (steps + 1) * high)) {
            steps++;
        }
        sum += steps * high;
    }
    return sum / 294.0f;
}

__device__ int longestPrime(const int* side) {
    int run = heldBy(side) & POINTS;
    int length = 0;
    while (run != 0) {
        run &= run >> 1;
        length++;
    }
    return length;
}

// A measure of a side; all sets begin with pips, and what follows depends on how many there are.
__device__ float measure(const int* side, const int* other, int measures, int which) {
    switch (which) {
        case 0:
            return pips(side) / 167.0f;
        case 1:
            if (measures == 2) {
                return rearmost(side) + rearmost(other) > BAR ? 1.0f : 0.0f;
            }
            return hittingRolls(side, other) / 36.0f;
        case 2: {
            int closed = __popc(heldBy(other) & 0x7E);
            return closed * closed / 36.0f;
        }
        case 3:
            return freedom(side, other);
        default:
            return longestPrime(side) / 6.0f;
    }
}

// Places of the opponent that face place p, where there are checkers on both.
__device__ __forceinline__ int facing(const int* position, int p) {
    return (occupied(position) >> p & 1) != 0 ? occupied(position + 4) & ON_BOARD & (-1 << (BAR + 1 - p)) : 0;
}

// How many inputs a thread lists.
__device__ int listed(const int* position, int measures, int pairs, int thread) {
    if (thread < LISTING_MEASURES) {
        int side = thread >= PLACES ? 4 : 0;
        int place = thread - (side ? PLACES : 0);
        int here = count(position + side, place);
        int size = 0;
        for (int k = 0; k < CODE; k++) {
            size += here != 0 && code(place, here, k) != 0 ? 1 : 0;
        }
        return size;
    }
    if (thread < LISTING_PAIRS) {
        return thread - LISTING_MEASURES < 2 * measures ? 1 : 0;
    }
    return pairs ? __popc((uint) facing(position, thread - LISTING_PAIRS + 1)) : 0;
}

// Lists a thread's inputs.
__device__ void list(const int* position, int measures, int thread, int at, int* active, float* values) {
    if (thread < LISTING_MEASURES) {
        int side = thread >= PLACES ? 4 : 0;
        int place = thread - (side ? PLACES : 0);
        int here = count(position + side, place);
        for (int k = 0; here != 0 && k < CODE; k++) {
            float value = code(place, here, k);
            if (value != 0) {
                active[at] = thread * CODE + k;
                values[at++] = value;
            }
        }
    } else if (thread < LISTING_PAIRS) {
        int which = thread - LISTING_MEASURES;
        int side = which >= measures ? 4 : 0;
        active[at] = LISTING_MEASURES * CODE + which;
        values[at] = measure(position + side, position + (side ^ 4), measures, which - (side ? measures : 0));
    } else {
        int p = thread - LISTING_PAIRS + 1;
        int nearest = BAR + 1 - p;
        int before = LISTING_MEASURES * CODE + 2 * measures;
        int first = before + 4 * (p * (p - 1) / 2 - nearest) + 2 * (heldBy(position) >> p & 1);
        for (uint left = facing(position, p); left != 0; left &= left - 1) {
            int q = __ffs((int) left) - 1;
            active[at] = first + 4 * q + (heldBy(position + 4) >> q & 1);
            values[at++] = 1;
        }
    }
}

// Scores of positions by the network for contact or the one for races. A block a row. Weights of a first layer lie input by
// input, those of later layers output by output; each is followed by its biases.
extern "C" __global__ void layers(
        const int* planes, const int* index, int swap, const int* shapes, const float* weights, float* logits) {
    __shared__ int active[MAX_ACTIVE];
    __shared__ float values[MAX_ACTIVE];
    __shared__ int sizes[LISTING];
    __shared__ float ping[MAX_WIDTH];
    __shared__ float pong[MAX_WIDTH];
    int row = blockIdx.x;
    int thread = threadIdx.x;
    int position[8];
    readPosition(planes, index, row, swap, position);
    if (((occupied(position) & ON_BOARD) == 0) || ((occupied(position + 4) & ON_BOARD) == 0)) {
        return;
    }
    const int* shape = shapes + (rearmost(position) + rearmost(position + 4) > BAR ? 0 : SHAPE);
    int measures = shape[0];
    const float* w = weights + shape[2];
    if (thread < LISTING) {
        sizes[thread] = listed(position, measures, shape[1], thread);
    }
    __syncthreads();
    int total = 0;
    int own = 0;
    for (int k = 0; k < LISTING; k++) {
        own = k == thread ? total : own;
        total += sizes[k];
    }
    if (thread < LISTING && sizes[thread] != 0) {
        list(position, measures, thread, own, active, values);
    }
    __syncthreads();
    int inputs = LISTING_MEASURES * CODE + 2 * measures + shape[1];
    int width = shape[SHAPE_OUTPUTS];
    for (int j = thread; j < width; j += blockDim.x) {
        float sum = w[(long) inputs * width + j];
        for (int i = 0; i < total; i++) {
            sum += values[i] * w[(long) active[i] * width + j];
        }
        ping[j] = fmaxf(sum, 0);
    }
    w += (long) (inputs + 1) * width;
    float* from = ping;
    float* to = pong;
    int layerCount = shape[3];
    for (int layer = 1; layer < layerCount; layer++) {
        __syncthreads();
        int outputs = shape[SHAPE_OUTPUTS + layer];
        for (int o = thread / 32; o < outputs; o += blockDim.x / 32) {
            float sum = 0;
            for (int i = thread & 31; i < width; i += 32) {
                sum += w[o * width + i] * from[i];
            }
            sum = sumOfWarp(sum) + w[outputs * width + o];
            if ((thread & 31) != 0) {
                continue;
            }
            if (layer == layerCount - 1) {
                logits[(long) row * OUT + o] = sum;
            } else {
                to[o] = fmaxf(sum, 0);
            }
        }
        w += (long) (width + 1) * outputs;
        width = outputs;
        float* next = from;
        from = to;
        to = next;
    }
}
