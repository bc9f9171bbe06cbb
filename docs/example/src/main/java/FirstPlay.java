import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.models.ModelCatalog;

/** Prints the best play for an opening roll. */
public class FirstPlay {
    public static void main(String[] args) throws Exception {
        try (Judge judge = Judge.open(ModelCatalog.shipped().load("swift"))) {
            Question question = Question.of(Position.start(), Roll.parse("3-1"));
            System.out.println("best: " + judge.ask(question, Effort.STATIC).best().play());
        }
    }
}
