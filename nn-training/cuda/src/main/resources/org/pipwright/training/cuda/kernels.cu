// Kernels of the trainer on a graphics card, compiled at run time for one network width W (a multiple of 128).
// Numbers of two bytes are bfloat16 where a network learns (gradients need its range) and IEEE half where a frozen one
// answers (three more bits); both are kept as unsigned short. A position is eight ints, as engine's Planes describes.

typedef unsigned short half_t;
typedef unsigned int uint;

#define INPUTS 264
#define PLACES 26
#define CODE 5
#define OUT 8
#define PER_LANE (W / 32)

__device__ __forceinline__ float wide(half_t x) {
    return __uint_as_float(((uint) x) << 16);
}

__device__ __forceinline__ half_t narrow(float x) {
    uint u = __float_as_uint(x);
    return (half_t) ((u + 0x7fff + ((u >> 16) & 1)) >> 16);
}

__device__ __forceinline__ float wideHalf(half_t x) {
    float y;
    asm("cvt.f32.f16 %0, %1;" : "=f"(y) : "h"(x));
    return y;
}

__device__ __forceinline__ half_t narrowHalf(float x) {
    half_t y;
    asm("cvt.rn.f16.f32 %0, %1;" : "=h"(y) : "f"(x));
    return y;
}

__device__ __forceinline__ uint pairHalf(float a, float b) {
    return (uint) narrowHalf(a) | ((uint) narrowHalf(b) << 16);
}

__device__ __forceinline__ uint pair(float a, float b) {
    return (uint) narrow(a) | ((uint) narrow(b) << 16);
}

__device__ __forceinline__ float sumOfWarp(float x) {
    for (int k = 16; k > 0; k >>= 1) {
        x += __shfl_xor_sync(0xffffffffu, x, k);
    }
    return x;
}

__device__ __forceinline__ int count(const int* side, int place) {
    return (side[0] >> place & 1) | (side[1] >> place & 1) << 1 | (side[2] >> place & 1) << 2 | (side[3] >> place & 1) << 3;
}

__device__ __forceinline__ int occupied(const int* side) {
    return side[0] | side[1] | side[2] | side[3];
}

__device__ __forceinline__ int rearmost(const int* side) {
    return 31 - __clz((occupied(side) & 0x03FFFFFE) | 1);
}

__device__ int pips(const int* side) {
    int sum = 0;
    for (int k = 0; k < 4; k++) {
        int plane = side[k] & 0x03FFFFFE;
        while (plane != 0) {
            int low = plane & -plane;
            sum += (31 - __clz(low)) << k;
            plane ^= low;
        }
    }
    return sum;
}

// Engine's PlaceCode.
__device__ __forceinline__ float code(int place, int c, int k) {
    if (place == 0) {
        switch (k) {
            case 0: return (float) min(c, 1);
            case 1: return min(c, 3) / 3.0f;
            case 2: return min(c, 5) / 5.0f;
            case 3: return max(0, min(c - 5, 5)) / 5.0f;
            default: return max(0, c - 10) / 5.0f;
        }
    }
    if (k == 0) {
        return c == 1 ? 1.0f : 0.0f;
    }
    if (k == 4) {
        return max(0, c - 4) / 3.0f;
    }
    return c > k ? 1.0f : 0.0f;
}

// Reads the position of a row: which one by index if there is an index, sides exchanged if asked.
__device__ __forceinline__ void readPosition(const int* planes, const int* index, int row, int swap, int* out) {
    long at = (index == 0 ? row : index[row]) * 8L;
    for (int k = 0; k < 8; k++) {
        out[k] = planes[at + (swap ? k ^ 4 : k)];
    }
}

__device__ __forceinline__ float input(const int* p, int e, int sideContact) {
    if (e < 2 * PLACES * CODE) {
        int place = e / CODE;
        int k = e - place * CODE;
        int side = place >= PLACES ? 1 : 0;
        place -= side * PLACES;
        return code(place, count(p + 4 * side, place), k);
    }
    e -= 2 * PLACES * CODE;
    return (e & 1) == 0 ? pips(p + 2 * e) / 167.0f : (float) sideContact;
}

// Inputs of positions. A warp a row; rows from the last real one on are filled with zeros.
extern "C" __global__ void encode(
        const int* planes, const int* index, int swap, int rows, int padded, int half, half_t* out) {
    int row = blockIdx.x * (blockDim.x / 32) + threadIdx.x / 32;
    int lane = threadIdx.x & 31;
    if (row >= padded) {
        return;
    }
    uint4* to = (uint4*) (out + (long) row * INPUTS);
    if (row >= rows) {
        for (int chunk = lane; chunk < INPUTS / 8; chunk += 32) {
            to[chunk] = make_uint4(0, 0, 0, 0);
        }
        return;
    }
    int p[8];
    readPosition(planes, index, row, swap, p);
    int contact = rearmost(p) + rearmost(p + 4) > 25 ? 1 : 0;
    for (int chunk = lane; chunk < INPUTS / 8; chunk += 32) {
        float x[8];
        for (int k = 0; k < 8; k++) {
            x[k] = input(p, chunk * 8 + k, contact);
        }
        to[chunk] = half
                ? make_uint4(pairHalf(x[0], x[1]), pairHalf(x[2], x[3]), pairHalf(x[4], x[5]), pairHalf(x[6], x[7]))
                : make_uint4(pair(x[0], x[1]), pair(x[2], x[3]), pair(x[4], x[5]), pair(x[6], x[7]));
    }
}

// Takes a row's mean off, of which each lane of a warp holds a part and its sum, and says what brings its spread to 1.
__device__ __forceinline__ float centre(float4* x, float sum) {
    float mean = sumOfWarp(sum) / W;
    float square = 0;
#pragma unroll
    for (int k = 0; k < PER_LANE / 4; k++) {
        x[k].x -= mean;
        x[k].y -= mean;
        x[k].z -= mean;
        x[k].w -= mean;
        square += x[k].x * x[k].x + x[k].y * x[k].y + x[k].z * x[k].z + x[k].w * x[k].w;
    }
    return rsqrtf(sumOfWarp(square) / W + 1e-5f);
}

// Layer norm of h + bias without gain: a warp a row, lane l holds elements 4 l to 4 l + 3 of each run of 128.
extern "C" __global__ void layerNorm(const float* h, const float* bias, int rows, half_t* u, float* scale) {
    int row = blockIdx.x * (blockDim.x / 32) + threadIdx.x / 32;
    int lane = threadIdx.x & 31;
    if (row >= rows) {
        return;
    }
    const float4* from = (const float4*) (h + (long) row * W);
    const float4* biases = (const float4*) bias;
    float4 x[PER_LANE / 4];
    float sum = 0;
#pragma unroll
    for (int k = 0; k < PER_LANE / 4; k++) {
        float4 a = from[k * 32 + lane];
        float4 b = biases[k * 32 + lane];
        x[k] = make_float4(a.x + b.x, a.y + b.y, a.z + b.z, a.w + b.w);
        sum += x[k].x + x[k].y + x[k].z + x[k].w;
    }
    float r = centre(x, sum);
    uint2* to = (uint2*) (u + (long) row * W);
#pragma unroll
    for (int k = 0; k < PER_LANE / 4; k++) {
        to[k * 32 + lane] = make_uint2(pair(x[k].x * r, x[k].y * r), pair(x[k].z * r, x[k].w * r));
    }
    if (scale != 0 && lane == 0) {
        scale[row] = r;
    }
}

// The same for halves in and out, without keeping the scale.
extern "C" __global__ void layerNormHalf(const half_t* h, const float* bias, int rows, half_t* u) {
    int row = blockIdx.x * (blockDim.x / 32) + threadIdx.x / 32;
    int lane = threadIdx.x & 31;
    if (row >= rows) {
        return;
    }
    const uint2* from = (const uint2*) (h + (long) row * W);
    const float4* biases = (const float4*) bias;
    float4 x[PER_LANE / 4];
    float sum = 0;
#pragma unroll
    for (int k = 0; k < PER_LANE / 4; k++) {
        uint2 a = from[k * 32 + lane];
        float4 b = biases[k * 32 + lane];
        x[k] = make_float4(
                wideHalf((half_t) a.x) + b.x,
                wideHalf((half_t) (a.x >> 16)) + b.y,
                wideHalf((half_t) a.y) + b.z,
                wideHalf((half_t) (a.y >> 16)) + b.w);
        sum += x[k].x + x[k].y + x[k].z + x[k].w;
    }
    float r = centre(x, sum);
    uint2* to = (uint2*) (u + (long) row * W);
#pragma unroll
    for (int k = 0; k < PER_LANE / 4; k++) {
        to[k * 32 + lane] = make_uint2(pairHalf(x[k].x * r, x[k].y * r), pairHalf(x[k].z * r, x[k].w * r));
    }
}

// Derivative through a norm: dh (+)= scale (du - mean(du) - u mean(du u)); a copy of dh of two bytes goes to dhNarrow.
extern "C" __global__ void layerNormBack(
        const half_t* du, const half_t* u, const float* scale, int rows, int first, float* dh, half_t* dhNarrow) {
    int row = blockIdx.x * (blockDim.x / 32) + threadIdx.x / 32;
    int lane = threadIdx.x & 31;
    if (row >= rows) {
        return;
    }
    const uint2* dus = (const uint2*) (du + (long) row * W);
    const uint2* us = (const uint2*) (u + (long) row * W);
    float d[PER_LANE];
    float x[PER_LANE];
    float sum = 0;
    float along = 0;
#pragma unroll
    for (int k = 0; k < PER_LANE / 4; k++) {
        uint2 a = dus[k * 32 + lane];
        uint2 b = us[k * 32 + lane];
        uint as[2] = {a.x, a.y};
        uint bs[2] = {b.x, b.y};
#pragma unroll
        for (int i = 0; i < 4; i++) {
            d[4 * k + i] = wide((half_t) (as[i >> 1] >> (16 * (i & 1))));
            x[4 * k + i] = wide((half_t) (bs[i >> 1] >> (16 * (i & 1))));
            sum += d[4 * k + i];
            along += d[4 * k + i] * x[4 * k + i];
        }
    }
    float mean = sumOfWarp(sum) / W;
    float meanAlong = sumOfWarp(along) / W;
    float r = scale[row];
    float4* to = (float4*) (dh + (long) row * W);
    uint2* toNarrow = (uint2*) (dhNarrow + (long) row * W);
#pragma unroll
    for (int k = 0; k < PER_LANE / 4; k++) {
        float4 old = first ? make_float4(0, 0, 0, 0) : to[k * 32 + lane];
        old.x += r * (d[4 * k] - mean - x[4 * k] * meanAlong);
        old.y += r * (d[4 * k + 1] - mean - x[4 * k + 1] * meanAlong);
        old.z += r * (d[4 * k + 2] - mean - x[4 * k + 2] * meanAlong);
        old.w += r * (d[4 * k + 3] - mean - x[4 * k + 3] * meanAlong);
        to[k * 32 + lane] = old;
        toNarrow[k * 32 + lane] = make_uint2(pair(old.x, old.y), pair(old.z, old.w));
    }
}

// Sums of columns of d, added to sums; where v is given, d is set to 0 first where v is not positive.
// A block takes 64 rows of 2 x 128 columns; sums must be cleared before.
extern "C" __global__ void columns(half_t* d, const half_t* v, int rows, float* sums) {
    int column = (blockIdx.x * 128 + threadIdx.x) * 2;
    int from = blockIdx.y * 64;
    if (column >= W) {
        return;
    }
    float a = 0;
    float b = 0;
    for (int row = from; row < min(from + 64, rows); row++) {
        uint* at = (uint*) (d + (long) row * W + column);
        uint x = *at;
        if (v != 0) {
            uint y = *(const uint*) (v + (long) row * W + column);
            x = ((y & 0xffffu) == 0 ? 0 : x & 0xffffu) | ((y >> 16) == 0 ? 0 : x & 0xffff0000u);
            *at = x;
        }
        a += wide((half_t) x);
        b += wide((half_t) (x >> 16));
    }
    atomicAdd(sums + column, a);
    atomicAdd(sums + column + 1, b);
}

// Which outcomes a position allows, as engine's PossibleOutcomes.
__device__ int possible(const int* p) {
    int mask = 63;
    if ((occupied(p + 4) & 1) != 0) {
        mask &= ~6;
    }
    if ((occupied(p) & 1) != 0) {
        mask &= ~48;
    }
    int mine = rearmost(p);
    int theirs = rearmost(p + 4);
    if (mine + theirs <= 25) {
        if (theirs < 19) {
            mask &= ~4;
        }
        if (mine < 19) {
            mask &= ~32;
        }
    }
    return mask;
}

// What a finished game is worth to the winner: 0 single, 1 gammon, 2 backgammon.
__device__ int resultOf(const int* loser) {
    int all = occupied(loser);
    return (all & 1) != 0 ? 0 : (all & 0x03F80000) != 0 ? 2 : 1;
}

__device__ int finished(const int* p, float* chances) {
    int first = (occupied(p) & 0x03FFFFFE) == 0;
    int second = (occupied(p + 4) & 0x03FFFFFE) == 0;
    if (!first && !second) {
        return 0;
    }
    for (int k = 0; k < 6; k++) {
        chances[k] = 0;
    }
    chances[first ? resultOf(p + 4) : 3 + resultOf(p)] = 1;
    return 1;
}

__device__ float equityOf(const float* c) {
    return c[0] + 2 * c[1] + 3 * c[2] - c[3] - 2 * c[4] - 3 * c[5];
}

__device__ void softmax(const float* logits, const float* bias, int mask, float* chances) {
    float largest = -1e30f;
    for (int k = 0; k < 6; k++) {
        if (mask >> k & 1) {
            largest = fmaxf(largest, logits[k] + bias[k]);
        }
    }
    float sum = 0;
    for (int k = 0; k < 6; k++) {
        chances[k] = (mask >> k & 1) ? expf(logits[k] + bias[k] - largest) : 0.0f;
        sum += chances[k];
    }
    for (int k = 0; k < 6; k++) {
        chances[k] /= sum;
    }
}

// Chances of positions from their scores, for the side whose planes come first in memory (so for the mover of a result
// when swap is set, which makes the network see the other side). Either all six, or the equity alone.
extern "C" __global__ void answer(
        const float* logits, const float* bias, const int* planes, const int* index, int swap, int rows, float* chances, float* equity) {
    int row = blockIdx.x * blockDim.x + threadIdx.x;
    if (row >= rows) {
        return;
    }
    int p[8];
    readPosition(planes, index, row, swap, p);
    float c[6];
    if (!finished(p, c)) {
        softmax(logits + (long) row * OUT, bias, possible(p), c);
    }
    if (swap) {
        for (int k = 0; k < 3; k++) {
            float x = c[k];
            c[k] = c[k + 3];
            c[k + 3] = x;
        }
    }
    if (chances != 0) {
        for (int k = 0; k < 6; k++) {
            chances[row * 6L + k] = c[k];
        }
    }
    if (equity != 0) {
        equity[row] = equityOf(c);
    }
}

// For each group of results, those within margin of the best equity, at most SLOTS, the best first. A warp a group.
#define SLOTS 6
extern "C" __global__ void keep(
        const float* equity, const int* starts, const int* counts, int groups, float margin, int most,
        int* kept, int* keptCounts, int* keptFirst, int* total) {
    int group = blockIdx.x * (blockDim.x / 32) + threadIdx.x / 32;
    int lane = threadIdx.x & 31;
    if (group >= groups) {
        return;
    }
    int start = starts[group];
    int size = counts[group];
    int chosen[SLOTS];
    int n = 0;
    float best = 0;
    float last = 1e30f;
    int lastIndex = -1;
    while (n < most && n < size) {
        // The largest after (last, lastIndex) in the order of falling equity, then rising index.
        float top = -1e30f;
        int topIndex = 0x7fffffff;
        for (int i = lane; i < size; i += 32) {
            float e = equity[start + i];
            int later = e < last || (e == last && i > lastIndex);
            if (later && (e > top || (e == top && i < topIndex))) {
                top = e;
                topIndex = i;
            }
        }
        for (int k = 16; k > 0; k >>= 1) {
            float otherTop = __shfl_xor_sync(0xffffffffu, top, k);
            int otherIndex = __shfl_xor_sync(0xffffffffu, topIndex, k);
            if (otherTop > top || (otherTop == top && otherIndex < topIndex)) {
                top = otherTop;
                topIndex = otherIndex;
            }
        }
        if (n == 0) {
            best = top;
        } else if (top < best - margin) {
            break;
        }
        chosen[n++] = start + topIndex;
        last = top;
        lastIndex = topIndex;
    }
    if (lane == 0) {
        int at = atomicAdd(total, n);
        keptCounts[group] = n;
        keptFirst[group] = at;
        for (int k = 0; k < n; k++) {
            kept[at + k] = chosen[k];
        }
    }
}

// The mean over the 21 rolls of the best reply's chances, and what was kept for the roll that was thrown.
// A warp a position, a lane a roll. thrown: SLOTS entries a position.
extern "C" __global__ void expect(
        const float* chances, const int* kept, const int* keptCounts, const int* keptFirst, const int* rolls, int positions,
        float* expected, int* thrownCount, int* thrownResult, float* thrownChances) {
    int position = blockIdx.x * (blockDim.x / 32) + threadIdx.x / 32;
    int lane = threadIdx.x & 31;
    if (position >= positions) {
        return;
    }
    float c[6] = {0, 0, 0, 0, 0, 0};
    if (lane < 21) {
        int group = position * 21 + lane;
        int first = keptFirst[group];
        int n = keptCounts[group];
        float top = -1e30f;
        int at = first;
        for (int k = 0; k < n; k++) {
            float e = equityOf(chances + (first + k) * 6L);
            if (e > top) {
                top = e;
                at = first + k;
            }
        }
        // Rolls in the order 1-1, 2-1, 2-2, 3-1 and so on: doubles at 0, 2, 5, 9, 14 and 20.
        float weight = (lane == 0 || lane == 2 || lane == 5 || lane == 9 || lane == 14 || lane == 20 ? 1.0f : 2.0f) / 36.0f;
        for (int k = 0; k < 6; k++) {
            c[k] = weight * chances[at * 6L + k];
        }
        if (lane == rolls[position]) {
            thrownCount[position] = n;
            for (int k = 0; k < n; k++) {
                thrownResult[position * SLOTS + k] = kept[first + k];
                for (int i = 0; i < 6; i++) {
                    thrownChances[(position * SLOTS + k) * 6L + i] = chances[(first + k) * 6L + i];
                }
            }
        }
    }
    for (int k = 0; k < 6; k++) {
        c[k] = sumOfWarp(c[k]);
    }
    if (lane < 6) {
        expected[position * 6L + lane] = c[lane];
    }
}

// Derivative of the loss by the scores: cross-entropy plus half the squared error of equity, one sample a row.
// Target rows by targetIndex if given; sides of the target exchanged with those of the position.
// sums: cross-entropy, squared error of equity, samples; biasGrad: eight, both added to.
extern "C" __global__ void loss(
        const float* logits, const float* bias, const int* planes, const int* index, int swap,
        const float* targets, const int* targetIndex, int rows, half_t* delta, float* biasGrad, float* sums) {
    int row = blockIdx.x * blockDim.x + threadIdx.x;
    float d[OUT] = {0, 0, 0, 0, 0, 0, 0, 0};
    float entropy = 0;
    float squared = 0;
    float one = 0;
    if (row < rows) {
        int p[8];
        readPosition(planes, index, row, swap, p);
        float c[6];
        if (!finished(p, c)) {
            int mask = possible(p);
            softmax(logits + (long) row * OUT, bias, mask, c);
            const float* from = targets + (targetIndex == 0 ? row : targetIndex[row]) * 6L;
            float t[6];
            for (int k = 0; k < 6; k++) {
                t[k] = from[swap ? (k + 3) % 6 : k];
            }
            float error = equityOf(c) - equityOf(t);
            float mean = equityOf(c);
            for (int k = 0; k < 6; k++) {
                float points = (k < 3 ? k + 1 : 2 - k);
                if (mask >> k & 1) {
                    d[k] = c[k] - t[k] + error * c[k] * (points - mean);
                    entropy -= t[k] * logf(fmaxf(c[k], 1e-12f));
                }
            }
            squared = error * error;
            one = 1;
        }
        uint4* to = (uint4*) (delta + (long) row * OUT);
        *to = make_uint4(pair(d[0], d[1]), pair(d[2], d[3]), pair(d[4], d[5]), 0);
    }
    for (int k = 0; k < 6; k++) {
        float s = sumOfWarp(d[k]);
        if ((threadIdx.x & 31) == 0) {
            atomicAdd(biasGrad + k, s);
        }
    }
    entropy = sumOfWarp(entropy);
    squared = sumOfWarp(squared);
    one = sumOfWarp(one);
    if ((threadIdx.x & 31) == 0) {
        atomicAdd(sums, entropy);
        atomicAdd(sums + 1, squared);
        atomicAdd(sums + 2, one);
    }
}

// Biases a block's input has had added so far: level 0 is that of the first layer.
extern "C" __global__ void addUp(const float* first, const float* weights, const long long* offsets, int blocks, float* out) {
    int j = blockIdx.x * blockDim.x + threadIdx.x;
    if (j >= W) {
        return;
    }
    float sum = first[j];
    out[j] = sum;
    for (int k = 0; k < blocks; k++) {
        sum += weights[offsets[k] + j];
        out[(k + 1) * W + j] = sum;
    }
}

extern "C" __global__ void squares(const float* x, int n, float* sum) {
    float s = 0;
    for (int i = blockIdx.x * blockDim.x + threadIdx.x; i < n; i += gridDim.x * blockDim.x) {
        s += x[i] * x[i];
    }
    s = sumOfWarp(s);
    if ((threadIdx.x & 31) == 0) {
        atomicAdd(sum, s);
    }
}

// A step of AdamW with clipping by the norm of the whole gradient, and the running average of the weights.
// The gradient is a sum over the batch; scale makes it a mean. squares: sum of squares of the sums.
extern "C" __global__ void adam(
        float* weights, float* first, float* second, float* average, const float* gradient, half_t* narrowed, int n,
        const float* squares, float scale, float clip, float rate, float decay, float beta1, float beta2,
        float correct1, float correct2, float keepAverage) {
    int i = blockIdx.x * blockDim.x + threadIdx.x;
    if (i >= n) {
        return;
    }
    float length = sqrtf(*squares) * scale;
    if (!(length < 1e20f)) {
        return;
    }
    float g = gradient[i] * scale * (length > clip ? clip / length : 1.0f);
    float m = beta1 * first[i] + (1 - beta1) * g;
    float v = beta2 * second[i] + (1 - beta2) * g * g;
    first[i] = m;
    second[i] = v;
    float w = weights[i] * (1 - rate * decay) - rate * (m / correct1) / (sqrtf(v / correct2) + 1e-8f);
    weights[i] = w;
    average[i] = keepAverage * average[i] + (1 - keepAverage) * w;
    narrowed[i] = narrow(w);
}

extern "C" __global__ void narrowAll(const float* x, half_t* out, int n) {
    int i = blockIdx.x * blockDim.x + threadIdx.x;
    if (i < n) {
        out[i] = narrow(x[i]);
    }
}

extern "C" __global__ void halveAll(const float* x, half_t* out, int n) {
    int i = blockIdx.x * blockDim.x + threadIdx.x;
    if (i < n) {
        out[i] = narrowHalf(x[i]);
    }
}

__device__ unsigned long long mix(unsigned long long z) {
    z = (z ^ z >> 30) * 0xBF58476D1CE4E5B9ULL;
    z = (z ^ z >> 27) * 0x94D049BB133111EBULL;
    return z ^ z >> 31;
}

// Random rows below size; through, if given, maps them on: out[i] = through[random]. picked keeps the random rows.
extern "C" __global__ void draw(unsigned long long seed, int n, int size, const int* through, int* picked, int* out) {
    int i = blockIdx.x * blockDim.x + threadIdx.x;
    if (i >= n) {
        return;
    }
    int r = (int) ((mix(seed + i * 0x9E3779B97F4A7C15ULL) >> 11) % (unsigned long long) size);
    if (picked != 0) {
        picked[i] = r;
    }
    out[i] = through == 0 ? r : through[r];
}
