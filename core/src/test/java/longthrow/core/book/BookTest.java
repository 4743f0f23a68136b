package longthrow.core.book;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import longthrow.core.answer.Answer;
import longthrow.core.build.Build;
import longthrow.core.build.Damage;
import longthrow.core.build.Decided;
import longthrow.core.build.FitWish;
import longthrow.core.build.Given;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.catalogue.Offer;
import longthrow.core.catalogue.Operation;
import longthrow.core.catalogue.PartKind;
import longthrow.core.clear.Clear;
import longthrow.core.engine.Fastener;
import longthrow.core.engine.FirstStart;
import longthrow.core.engine.MockUp;
import longthrow.core.life.Life;
import longthrow.core.measure.Measure;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Unit;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.quantity.Units;
import longthrow.core.shake.Shake;
import longthrow.core.term.Choice;
import longthrow.core.term.Part;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;

/** An invented engine, as its owner wrote it down, on paper. */
class BookTest {
    private static final Unit MM = Units.MILLIMETRE;

    private final Map<Term, List<Given>> given = new EnumMap<>(Term.class);
    private final Map<Choice, String> choices = new LinkedHashMap<>(Map.of(
            Choice.VALVE_LAYOUT, "overhead", Choice.FUEL, "petrol", Choice.ROD_METAL, "steel", Choice.DUTY, "mild"));

    BookTest() {
        typed(Term.BORE, "66.00", "0.01");
        typed(Term.STROKE, "50.00", "0.02");
        given.put(
                Term.ROD_LENGTH, List.of(new Given.Specified(mm("84.00"), mm("0.03"), "an invented maker", false, "")));
        given.put(
                Term.COMPRESSION_HEIGHT, List.of(new Given.Assumed(mm("24.00"), mm("0.30"), "it looked like it", "")));
        typed(Term.DECK_HEIGHT, "133.50", "0.05");
        typed(Term.GASKET_THICKNESS, "1.10", "0.03");
    }

    private void typed(Term term, String value, String plusMinus) {
        given.put(term, List.of(new Given.Typed(mm(value), mm(plusMinus), "")));
    }

    private static Quantity mm(String value) {
        return Quantity.of(value, MM);
    }

    private Build build(Damage... damage) {
        return new Build(
                "invented",
                true,
                UnitSystem.METRIC_FIRST,
                List.of(),
                Map.of(),
                given,
                choices,
                Map.of(),
                List.of(),
                Map.of(),
                List.of(damage),
                List.of(),
                List.of(),
                List.of(),
                Map.of(),
                FitWish.NONE,
                List.of());
    }

    private Book book(Damage... damage) {
        Build build = build(damage);
        Answer measure = Measure.of(build, List.of());
        return Book.of(build, Answers.of(measure, Optional.empty()), Catalogue.EMPTY, List.of());
    }

    private static Book.RecipeLine line(Book book, String label) {
        return book.recipe().stream()
                .filter(l -> l.label().equals(label))
                .findFirst()
                .orElseThrow();
    }

    /** A row of a catalogue need not have a name; its code stands alone then, with no empty part behind a mark. */
    @Test
    void aPieceWithoutANameIsItsCode() {
        Offer offer =
                new Offer(OptionalLong.of(650), OptionalLong.empty(), "EUR", "an invented seller", OptionalInt.empty());
        Build build = build().withTaken(List.of(new Decided.Bought(PartKind.GASKET, "C864", "", offer)));
        Book book = Book.of(
                build,
                Answers.of(Measure.of(build, List.of()), Optional.of(longthrow.core.fit.Fit.of(build, gaskets(offer)))),
                gaskets(offer),
                List.of());
        assertThat(book.cost().lines())
                .extracting(Book.CostLine::piece)
                .allSatisfy(piece -> assertThat(piece).doesNotContain(": ;").doesNotEndWith(": "))
                .anySatisfy(piece -> assertThat(piece).startsWith("taken: C864"));
    }

    private static Catalogue gaskets(Offer offer) {
        return new Catalogue(
                List.of(new longthrow.core.catalogue.CataloguePart(
                        PartKind.GASKET,
                        "C864",
                        "",
                        true,
                        Map.of(
                                Term.GASKET_THICKNESS,
                                new longthrow.core.catalogue.CataloguePart.Figure(mm("1.20"), mm("0.03"), false)),
                        Map.of(),
                        offer,
                        longthrow.core.catalogue.Voucher.CLAIMED,
                        "",
                        "")),
                List.of());
    }

    @Test
    void eachLineOfTheRecipeSaysWhetherItIsMeasuredOrGuessed() {
        Book book = book();
        assertThat(line(book, "bore").how()).isEqualTo("measured");
        assertThat(line(book, "bore").sound()).isTrue();
        assertThat(line(book, "rod length").how()).isEqualTo("by a maker's sheet");
        assertThat(line(book, "compression height").how()).isEqualTo("guessed");
        assertThat(line(book, "compression height").sound()).isFalse();
        assertThat(line(book, "squish").how()).startsWith("worked out").contains("guessed");
        assertThat(line(book, "what it will burn").figure()).isEqualTo("petrol");
    }

    @Test
    void whatIsGuessedOrOnASheetIsMeasuredAgainBeforeMoneyIsSpent() {
        assertThat(book().again())
                .anySatisfy(a -> assertThat(a.what()).isEqualTo("rod length"))
                .anySatisfy(a -> assertThat(a.what()).isEqualTo("compression height"))
                .noneSatisfy(a -> assertThat(a.what()).isEqualTo("gasket thickness"));
    }

    @Test
    void noTorqueAndNoLubricantIsMadeUp() {
        assertThat(book().torques()).isNotEmpty().allSatisfy(t -> {
            assertThat(t.torque()).isEqualTo(Fastener.UNKNOWN);
            assertThat(t.lubricant()).isEqualTo(Fastener.UNKNOWN);
            assertThat(t.source()).isNotBlank();
        });
    }

    @Test
    void aTorqueStandsAsItsOwnerWroteItAndWhoseWordItIs() {
        given.put(
                Term.ROD_BOLT_TORQUE,
                List.of(new Given.Typed(
                        Quantity.of("11.5", Units.NEWTON_METRE), Quantity.of("0.5", Units.NEWTON_METRE), "")));
        given.put(
                Term.FLYWHEEL_NUT_TORQUE,
                List.of(new Given.Specified(
                        Quantity.of("74", Units.NEWTON_METRE),
                        Quantity.of("4", Units.NEWTON_METRE),
                        "maker's manual",
                        false,
                        "")));
        choices.put(Choice.ROD_BOLT_LUBRICANT, "oil");

        assertThat(torque("rod bolts").torque()).startsWith("11.5 ± 0.5 N·m").contains("as written; hold it against");
        assertThat(torque("rod bolts").lubricant()).isEqualTo("oil");
        assertThat(torque("flywheel nut").torque()).startsWith("74.0 ± 3.8 N·m").endsWith("by its maker");
        assertThat(torque("flywheel nut").lubricant()).isEqualTo(Fastener.UNKNOWN);
    }

    private Book.Torque torque(String joint) {
        return book().torques().stream()
                .filter(t -> t.joint().equals(joint))
                .findFirst()
                .orElseThrow();
    }

    /** VDI 2230 tables, friction 0.14 (from memory): M6 8.8 10.1, M8 8.8 24.6, M8 10.9 36.1 N m; maker practice rounds. */
    @Test
    void plainMetricScrewsAgreeWithTheStandardWithinAFewPerCent() {
        Map<String, Double> standard = Map.of("M6, grade 8.8", 10.1, "M8, grade 8.8", 24.6, "M8, grade 10.9", 36.1);
        standard.forEach((thread, torque) -> assertThat(Fastener.plain())
                .filteredOn(p -> p.thread().equals(thread))
                .singleElement()
                .satisfies(p -> assertThat(p.newtonMetres() / torque).isBetween(0.95, 1.05)));
    }

    @Test
    void everyLimitAndEveryStepSaysWhereItComesFrom() {
        Book book = book();
        assertThat(book.targets())
                .allSatisfy(t -> assertThat(t.limits()).isNotEmpty().allSatisfy(l -> {
                    assertThat(l.source()).isNotBlank();
                    assertThat(l.window()).isNotBlank();
                }));
        assertThat(book.steps()).allSatisfy(s -> assertThat(s.source()).contains("certainty"));
    }

    @Test
    void gapsAndStepsAreThoseOfThisEngine() {
        Book petrol = book();
        assertThat(petrol.steps()).doesNotContain(FirstStart.METHANOL_CARD);
        assertThat(petrol.targets())
                .anySatisfy(t -> assertThat(t.label()).isEqualTo(MockUp.VALVE_TO_PISTON_INTAKE.label()))
                .anySatisfy(t -> {
                    assertThat(t.label()).isEqualTo(MockUp.ROD_TO_ANYTHING.label());
                    assertThat(t.limits()).extracting(Book.Limit::window).containsExactly("least 1.3 mm");
                });
        choices.put(Choice.FUEL, "methanol");
        choices.put(Choice.VALVE_LAYOUT, "side");
        choices.put(Choice.ROD_METAL, "billet_aluminium");
        Book kart = book();
        assertThat(kart.steps()).contains(FirstStart.METHANOL_CARD);
        assertThat(kart.targets())
                .noneSatisfy(t -> assertThat(t.label()).isEqualTo(MockUp.VALVE_TO_PISTON_INTAKE.label()))
                .anySatisfy(t ->
                        assertThat(t.limits()).extracting(Book.Limit::window).containsExactly("least 1.5 mm"));
    }

    @Test
    void aRefusedEngineIsNeverApproved() {
        Book book = book(new Damage(Part.FLYWHEEL, Damage.Kind.CRACK, "at the hub"));
        assertThat(book.isRefused()).isTrue();
        assertThat(book.approval()).startsWith("REFUSED").contains("approves nothing");
        assertThat(book.stops().get(0).refused()).isTrue();
        Book sound = book();
        assertThat(sound.isRefused()).isFalse();
        assertThat(sound.approval())
                .as("what nobody asked approves nothing")
                .startsWith("NOT APPROVED yet")
                .contains("what touches is not worked out");
    }

    /** The stop says that the mock-up is signed for at the end of the Book: there is such a line. */
    @Test
    void theMockUpIsSignedForByALineOfItsOwn() {
        assertThat(book().signatures())
                .filteredOn(line -> line.contains("mocked up"))
                .containsExactly(Book.MOCKED_UP_BY);
    }

    /** The piston in hand decides: 65.94 + 0.0005 to 0.001 times the bore (common practice), against a bore of 65.95. */
    @Test
    void aTightBoreIsHonedToThePistonInHand() {
        choices.put(Choice.PISTON_ALLOY, "cast");
        choices.put(Choice.CYLINDER_METAL, "iron");
        typed(Term.BORE, "65.950", "0.002");
        typed(Term.PISTON_DIAMETER, "65.940", "0.002");
        assertThat(book().tickets()).singleElement().satisfies(t -> {
            assertThat(t.work()).contains("hone to the piston in hand");
            assertThat(t.from()).startsWith("65.95");
            assertThat(t.to()).contains("65.973").contains("66.006");
            assertThat(t.datum()).isEqualTo("crank axis");
            assertThat(t.inspect()).contains("three depths");
        });
    }

    @Test
    void aBoreInsideItsWindowGoesToNoShop() {
        choices.put(Choice.PISTON_ALLOY, "cast");
        choices.put(Choice.CYLINDER_METAL, "iron");
        typed(Term.PISTON_DIAMETER, "65.950", "0.002");
        assertThat(book().tickets()).isEmpty();
    }

    @Test
    void nothingIsPricedByGuess() {
        Book book = book();
        assertThat(book.cost().lines()).isEmpty();
        assertThat(book.cost().total()).isEmpty();
        assertThat(book.cost().unpriced()).contains("gasket set", "spark plug");
        assertThat(book.cost().unpriced()).noneMatch(u -> u.matches(".*\\d.*"));
    }

    /** What is not asked is not there, and what is asked brings its defaults and its stops, each once. */
    @Test
    void everyAnswerBringsWhatItRestsOnOnce() {
        typed(Term.SKIRT_BELOW_PIN, "17.60", "0.05");
        typed(Term.COUNTERWEIGHT_RADIUS, "38.90", "0.05");
        Build build = build();
        Answers some = Answers.of(Measure.of(build, List.of()), Optional.empty());
        Answers all = some.with(
                Optional.of(Clear.of(build)),
                Optional.of(Life.of(build, Catalogue.EMPTY, List.of())),
                Optional.of(Shake.of(build)));
        Book without = Book.of(build, some, Catalogue.EMPTY, List.of());
        Book with = Book.of(build, all, Catalogue.EMPTY, List.of());
        assertThat(without.isWhole()).isFalse();
        assertThat(without.touching()).isEmpty();
        assertThat(with.isWhole()).isTrue();
        assertThat(with.defaults())
                .doesNotHaveDuplicates()
                .containsAll(Clear.of(build).defaults());
        assertThat(with.stops())
                .doesNotHaveDuplicates()
                .containsAll(Clear.of(build).stops());
        // 84.00 - 25.00 - 17.60 - 38.90 = 2.50 mm
        assertThat(with.touching().orElseThrow().told()).anySatisfy(t -> {
            assertThat(t.pair()).isEqualTo("piston skirt to counterweight");
            assertThat(t.cold().gap()).startsWith("2.50 ± ");
            assertThat(t.cold().angle()).isEqualTo("180°");
        });
        assertThat(with.limits().orElseThrow().line()).startsWith("NOT APPROVED: ");
        assertThat(with.shaking().orElseThrow().line()).startsWith("Balance factor and drill plan unknown: read ");
    }

    /** 84.00 - 25.00 - 17.60 - 42.90 = -1.50 mm: an overlap is said by its depth, on top, with what to take off. */
    @Test
    void anOverlapIsADepthAndAStop() {
        typed(Term.SKIRT_BELOW_PIN, "17.60", "0.05");
        typed(Term.COUNTERWEIGHT_RADIUS, "42.90", "0.05");
        Build build = build();
        Book book = Book.of(
                build,
                Answers.of(Measure.of(build, List.of()), Optional.empty())
                        .with(Optional.of(Clear.of(build)), Optional.empty(), Optional.empty()),
                Catalogue.EMPTY,
                List.of());
        assertThat(book.isRefused()).isTrue();
        TouchChapter touching = book.touching().orElseThrow();
        assertThat(touching.told().get(0).isGrave()).isTrue();
        assertThat(touching.told().get(0).cold().gap()).startsWith("overlap, 1.50 ± ");
        assertThat(touching.told().get(0).mend()).startsWith("shorten the skirt by ");
        assertThat(touching.least()).startsWith("Least gap: piston skirt to counterweight overlap, 1.50");
    }

    @Test
    void defaultsAreThoseOfTheAnswer() {
        Build build = build();
        assertThat(book().defaults()).isEqualTo(Measure.of(build, List.of()).defaults());
    }

    @Test
    void whatIsSharedHoldsTheSameFiguresAndNoFreeWord() {
        Build build = build(new Damage(Part.CYLINDER, Damage.Kind.SCORED, "in a village"));
        Shared shared = Shared.of(build, Catalogue.EMPTY);
        assertThat(shared.build().name()).doesNotContain("invented");
        assertThat(shared.build().damage().get(0).where()).isEmpty();
        assertThat(shared.leftOut())
                .contains(
                        "engine.name",
                        "seen: where",
                        "connecting_rod.length: by",
                        "piston.compression_height: because");
        assertThat(Measure.of(shared.build(), List.of()).values().stream()
                        .map(v -> v.figure().value()))
                .containsExactlyElementsOf(Measure.of(build, List.of()).values().stream()
                        .map(v -> v.figure().value())
                        .toList());
    }

    /** 873.1 hPa is a place some 1200 m up. */
    @Test
    void theAirOfThePlaceIsNotShared() {
        FitWish here = new FitWish(
                List.of(),
                List.of(),
                OptionalLong.empty(),
                "",
                true,
                List.of(),
                Quantity.of("873.1", Units.HECTOPASCAL));
        Shared shared = Shared.of(build().withFit(here), Catalogue.EMPTY);
        assertThat(shared.build().fit().airPressure()).isNull();
        assertThat(shared.leftOut()).contains("fit.air_pressure").noneMatch(l -> l.contains("873"));
    }

    @Test
    void sharingTwiceLeavesNothingMoreOut() {
        Shared once = Shared.of(build(), Catalogue.EMPTY);
        Shared twice = Shared.of(once.build(), once.catalogue());
        assertThat(twice.leftOut()).isEmpty();
        assertThat(twice.build()).isEqualTo(once.build());
    }

    // ---- what is taken

    private Build taken() {
        given.put(
                Term.SMALL_END_BORE,
                List.of(new Given.Specified(mm("17.02"), mm("0.003"), "after machining: hone", false, "")));
        given.put(Term.BIG_END_BORE, List.of(new Given.Specified(mm("27.02"), mm("0.01"), "R3", true, "")));
        Offer rod =
                new Offer(OptionalLong.of(9500), OptionalLong.of(700), "EUR", "a shop in a village", OptionalInt.of(5));
        Offer hone = new Offer(OptionalLong.of(1400), OptionalLong.empty(), "EUR", "", OptionalInt.empty());
        return build().withTaken(List.of(
                new Decided.Bought(PartKind.CONNECTING_ROD, "R3", "billet rod", rod),
                new Decided.Work(
                        Operation.Kind.SMALL_END_HONE,
                        "HONE",
                        "",
                        hone,
                        mm("0.01"),
                        mm("17.01"),
                        mm("17.02"),
                        mm("0.002"),
                        "")));
    }

    private static Book book(Build build) {
        return Book.of(build, Answers.of(Measure.of(build, List.of()), Optional.empty()), Catalogue.EMPTY, List.of());
    }

    @Test
    void whatIsTakenIsATicketAndOnTheBill() {
        Book book = book(taken());
        assertThat(book.tickets()).singleElement().satisfies(t -> {
            assertThat(t.part()).isEqualTo("R3, connecting rod");
            assertThat(t.work()).isEqualTo("hone the small end by 0.010 mm (0.0004 in)");
            assertThat(t.from()).startsWith("17.0100 mm");
            assertThat(t.to()).startsWith("17.0200 mm");
            assertThat(t.tolerance()).isEqualTo("± 0.002 mm");
            assertThat(t.datum()).isEqualTo("big-end bore");
            assertThat(t.source()).contains("taken: HONE");
        });
        assertThat(book.cost().lines())
                .extracting(Book.CostLine::price)
                .as("with shipping")
                .containsExactly("102.00 EUR", "14.00 EUR");
        assertThat(book.cost().total()).isEqualTo("taken: 116.00 EUR");
    }

    @Test
    void aPlannedSizeAndASellersWordAreToBeReadAgain() {
        Book book = book(taken());
        assertThat(line(book, "small-end bore").how()).isEqualTo("planned, not machined yet; read it after the job");
        assertThat(line(book, "small-end bore").sound()).isFalse();
        assertThat(line(book, "big-end bore").how()).isEqualTo("by a seller's list");
        assertThat(book.again())
                .anySatisfy(a -> {
                    assertThat(a.what()).isEqualTo("small-end bore");
                    assertThat(a.why()).contains("planned, not machined yet");
                })
                .anySatisfy(a -> {
                    assertThat(a.what()).isEqualTo("big-end bore");
                    assertThat(a.why()).contains("measure the piece in hand");
                });
    }

    /** What is not in hand cannot be read before it is bought; the bore of the cylinder can. */
    @Test
    void whatWaitsForAPartOrForWorkIsReadWhenItIsThere() {
        Book book = book(taken());
        assertThat(book.onArrival())
                .extracting(Book.ReadAgain::what)
                .contains("small-end bore", "big-end bore", "rod length");
        assertThat(book.before()).extracting(Book.ReadAgain::what).doesNotContain("small-end bore", "rod length");
        assertThat(book.before())
                .as("guessed, of a piston that is there")
                .extracting(Book.ReadAgain::what)
                .contains("compression height");
        Build choosing = build().withFit(new FitWish(
                List.of(PartKind.GASKET, PartKind.CONNECTING_ROD),
                List.of(),
                OptionalLong.empty(),
                "",
                true,
                List.of(),
                null));
        given.put(Term.DECK_CLEARANCE_THRUST, List.of(new Given.Assumed(mm("0.1"), mm("0.05"), "seen", "")));
        assertThat(new Chosen(choosing, new Words(UnitSystem.METRIC_FIRST)).waits(Term.DECK_CLEARANCE_THRUST))
                .as("read with the rod in")
                .isTrue();
        assertThat(new Chosen(choosing, new Words(UnitSystem.METRIC_FIRST)).waits(Term.GASKET_THICKNESS))
                .as("the gasket that is there was read")
                .isFalse();
    }

    /** The shop says no tolerance, so no figure of the answer is there; the plan is said for all that, and never as a size. */
    @Test
    void whatIsChosenAndPlannedIsSaidByItsCode() {
        Build taken = taken();
        assertThat(book(taken).chosen())
                .containsExactly(
                        "connecting rod: R3, billet rod, not read yet",
                        "planned: hone the small end: small-end bore to 17.020 mm, by HONE, not read yet");
        given.put(
                Term.SMALL_END_BORE,
                List.of(new Given.Specified(mm("17.02"), null, "after machining: hone", false, "")));
        Book vague = book(build().withTaken(taken.taken()));
        assertThat(line(vague, "small-end bore").figure())
                .startsWith("planned: ")
                .contains("17.020 mm", "not read yet");
    }

    @Test
    void whatIsNotReadIsOneLineOfItsPart() {
        given.put(Term.BIG_END_BORE, List.of(new Given.NotKnown("")));
        given.put(Term.SMALL_END_BORE, List.of(new Given.NotKnown("")));
        given.put(Term.MAIN_JOURNAL, List.of(new Given.NotKnown("worn off the sheet")));
        Book book = book();
        assertThat(book.unread())
                .containsExactly(new Book.Unread("connecting rod", List.of("big-end bore", "small-end bore")));
        assertThat(book.readings())
                .extracting(Book.ReadingLine::label)
                .doesNotContain("big-end bore")
                .as("there is something to say of it")
                .contains("main journal");
    }

    @Test
    void theTicketGoesOnceTheSizeIsReadOrTheWorkIsTakenOut() {
        Build taken = taken();
        assertThat(book(taken.withTaken(taken.taken().subList(0, 1))).tickets()).isEmpty();
        given.put(
                Term.SMALL_END_BORE,
                List.of(
                        taken.of(Term.SMALL_END_BORE).get(0),
                        new Given.Taken(List.of(mm("17.021")), null, null, null, Given.Origin.NOT_SAID, "")));
        Book read = book(build().withTaken(taken.taken()));
        assertThat(read.tickets()).isEmpty();
        assertThat(read.cost().total()).isEqualTo("taken: 116.00 EUR");
        assertThat(line(read, "small-end bore").how()).doesNotContain("planned");
    }

    @Test
    void whoSellsWhatIsTakenIsNotShared() {
        Shared shared = Shared.of(taken(), Catalogue.EMPTY);
        assertThat(shared.build().taken()).extracting(d -> d.offer().vendor()).containsExactly("", "");
        assertThat(shared.leftOut()).contains("taken: vendor");
        assertThat(shared.lookAgain()).anySatisfy(l -> assertThat(l).contains("taken"));
        assertThat(book(shared.build()).tickets()).isEqualTo(book(taken()).tickets());
    }
}
