package longthrow.core.engine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class RuleTest {
    @Test
    void keysOfRulesAreUnique() {
        assertThat(Arrays.stream(Rule.values()).map(Rule::key))
                .doesNotHaveDuplicates()
                .allMatch(RuleTest::isKey);
    }

    @ParameterizedTest
    @EnumSource
    void keysOfAlternativesAreUniqueWithinTheirRule(Rule rule) {
        assertThat(rule.alternatives()).isNotEmpty();
        assertThat(rule.alternatives().stream().map(Alternative::key))
                .doesNotHaveDuplicates()
                .allMatch(RuleTest::isKey);
    }

    @ParameterizedTest
    @EnumSource
    void everyAlternativeHasALimitASourceAndALabel(Rule rule) {
        for (Alternative alternative : rule.alternatives()) {
            assertThat(alternative.lower().isPresent() || alternative.upper().isPresent())
                    .as(rule.key(alternative))
                    .isTrue();
            assertThat(alternative.evidence()).as(rule.key(alternative)).isNotEmpty();
            assertThat(alternative.label()).isNotBlank();
            assertThat(alternative.source())
                    .contains(alternative.evidence().get(0).label())
                    .contains("certainty " + alternative.certainty());
        }
    }

    /** What one source alone says is never certain, and what nobody has a source for is not certain either. */
    @ParameterizedTest
    @EnumSource
    void commonPracticeAloneIsNeverPhysics(Rule rule) {
        assertThat(rule.alternatives())
                .filteredOn(a -> a.evidence().equals(List.of(Evidence.COMMON_PRACTICE)))
                .noneMatch(a -> a.certainty() == Certainty.A);
    }

    @ParameterizedTest
    @EnumSource
    void limitsAreOfTheKindOfTheFigure(Rule rule) {
        for (Alternative alternative : rule.alternatives()) {
            for (Bound bound : Stream.concat(alternative.lower().stream(), alternative.upper().stream())
                    .toList()) {
                if (bound.stated() != null) {
                    assertThat(bound.stated().dimension())
                            .as(rule.key(alternative))
                            .isEqualTo(rule.term().dimension());
                }
                bound.reference()
                        .ifPresent(t ->
                                assertThat(t.dimension()).isEqualTo(rule.term().dimension()));
            }
            for (Term term : rule.terms()) {
                assertThat(term.dimension()).isEqualTo(rule.term().dimension());
            }
        }
    }

    @ParameterizedTest
    @EnumSource
    void everyAlternativeIsReachedByTheWordsItIsMeantFor(Rule rule) {
        for (Alternative alternative : rule.alternatives()) {
            Engine engine = new Engine();
            alternative
                    .condition()
                    .clauses()
                    .forEach(c -> engine.is(c.choice(), c.options().get(0)));
            assertThat(rule.applicable(engine.build()))
                    .as(rule.key(alternative))
                    .contains(alternative);
            assertThat(alternative.condition().in(engine.build())).isEqualTo(Condition.Holds.YES);
            engine.choose(rule.key(), alternative.key());
            assertThat(rule.inForce(engine.build())).contains(alternative);
        }
    }

    /** A class rule sheet binds its entrants and nobody else. */
    @Test
    void capOfAClassCountsOnlyWhereItIsPickedAndTheWheelIsSaidToBeIron() {
        Rule cap = Rule.IRON_WHEEL_CLASS_CAP;
        assertThat(cap.inForce(new Engine().build())).isEmpty();
        assertThat(cap.inForce(
                        new Engine().is(Choice.FLYWHEEL_KIND, "solid_iron").build()))
                .isEmpty();
        assertThat(cap.inForce(new Engine().choose(cap.key(), "pulling").build()))
                .isEmpty();
        assertThat(cap.inForce(new Engine()
                        .is(Choice.FLYWHEEL_KIND, "steel")
                        .choose(cap.key(), "pulling")
                        .build()))
                .isEmpty();
        assertThat(cap.inForce(new Engine()
                        .is(Choice.FLYWHEEL_KIND, "solid_iron")
                        .choose(cap.key(), "pulling")
                        .build()))
                .isPresent();
    }

    /** A word that nothing is meant for would be asked for in vain; FLYWHEEL_KIND and the rest decide rules, DONOR and metals do not. */
    @Test
    void wordsThatRulesHangOnAreOnesTheOwnerCanChoose() {
        Set<Choice> used = EnumSet.noneOf(Choice.class);
        for (Rule rule : Rule.values()) {
            rule.alternatives().forEach(a -> a.condition().clauses().forEach(c -> used.add(c.choice())));
        }
        assertThat(used)
                .contains(
                        Choice.ROD_METAL,
                        Choice.BIG_END_BEARING,
                        Choice.PISTON_ALLOY,
                        Choice.FLYWHEEL_KIND,
                        Choice.FUEL,
                        Choice.DUTY,
                        Choice.VALVE_LAYOUT)
                .allSatisfy(c -> assertThat(c.options()).isNotEmpty());
    }

    @ParameterizedTest
    @EnumSource
    void everySideThatCanFailSaysHowItIsMended(Rule rule) {
        if (rule.kind() != Rule.Kind.GUIDE) {
            List<String> silent = new ArrayList<>();
            for (Alternative a : rule.alternatives()) {
                if (a.lower().isPresent() && rule.whenLow().how().isBlank()) {
                    silent.add(rule.key(a) + " low");
                }
                if (a.upper().isPresent() && rule.whenHigh().how().isBlank()) {
                    silent.add(rule.key(a) + " high");
                }
            }
            assertThat(silent).isEmpty();
        }
    }

    private static boolean isKey(String key) {
        return key.matches("[a-z][a-z0-9_]*");
    }
}
