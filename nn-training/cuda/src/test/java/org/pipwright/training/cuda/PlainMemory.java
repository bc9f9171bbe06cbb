package org.pipwright.training.cuda;

import java.util.ArrayList;
import java.util.List;

/** The memory of lessons as a list: the twin of the card's. */
final class PlainMemory {
    /** A position, eight ints, and the six chances it should give the side on roll. */
    record Lesson(int[] planes, float[] target) {}

    private final int capacity;
    private final List<Lesson> lessons = new ArrayList<>();
    private int next;

    PlainMemory(int capacity) {
        this.capacity = capacity;
    }

    void add(LessonList list) {
        for (int i = 0; i < list.size(); i++) {
            int[] planes = new int[8];
            float[] target = new float[6];
            System.arraycopy(list.planes(), 8 * i, planes, 0, 8);
            System.arraycopy(list.targets(), 6 * i, target, 0, 6);
            Lesson lesson = new Lesson(planes, target);
            if (lessons.size() < capacity) {
                lessons.add(lesson);
            } else {
                lessons.set(next, lesson);
            }
            next = (next + 1) % capacity;
        }
    }

    List<Lesson> lessons() {
        return lessons;
    }
}
