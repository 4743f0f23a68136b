package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalInt;
import java.util.OptionalLong;
import longthrow.buildfile.RowFate.Outcome;
import longthrow.core.catalogue.CataloguePart;
import longthrow.core.catalogue.Offer;
import longthrow.core.catalogue.Operation;
import longthrow.core.catalogue.PartKind;
import longthrow.core.catalogue.Voucher;
import longthrow.core.quantity.ExactLength;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CatalogueFileTest {
    static Imported csv(String name, String text) {
        return CatalogueFile.csv(name, text.getBytes(StandardCharsets.UTF_8));
    }

    static Imported yaml(String text) {
        return CatalogueFile.yaml("parts.yaml", text.getBytes(StandardCharsets.UTF_8));
    }

    private static CataloguePart only(Imported imported) {
        assertThat(imported.faults()).extracting(Fault::message).isEmpty();
        assertThat(imported.fates())
                .flatExtracting(RowFate::reasons)
                .extracting(Fault::message)
                .isEmpty();
        assertThat(imported.parts()).hasSize(1);
        return imported.parts().get(0);
    }

    private static String figure(CataloguePart part, Term term) {
        CataloguePart.Figure figure = part.figure(term).orElseThrow();
        return figure.value() + (figure.tolerance() == null ? "" : " ± " + figure.tolerance());
    }

    @Test
    void everyColumnOfARowIsKept() {
        CataloguePart rod = only(csv("rods.csv", """
                # kind: connecting_rod
                # invented: yes
                code,name,length [mm],length ±,big_end_bore,small_end_bore (in),rated_speed [rpm],metal,price [EUR],\
                shipping,vendor,lead_days,basis,by,when,batch,note
                R3,long rod,86.40,0.03,27.02 mm ± 0.01 mm,0.6693,8000,Billet aluminium,95.5,4.90 EUR,Quillane,3 weeks,\
                measured,the owner,2026-10-01,B7,"with, a comma"
                """));
        assertThat(rod.kind()).isEqualTo(PartKind.CONNECTING_ROD);
        assertThat(rod.invented()).isTrue();
        assertThat(rod.name()).isEqualTo("long rod");
        assertThat(figure(rod, Term.ROD_LENGTH)).isEqualTo("86.40 mm ± 0.03 mm");
        assertThat(figure(rod, Term.BIG_END_BORE)).isEqualTo("27.02 mm ± 0.01 mm");
        assertThat(figure(rod, Term.SMALL_END_BORE)).isEqualTo("0.6693 in");
        assertThat(figure(rod, Term.ROD_RATED_SPEED)).isEqualTo("8000 rpm");
        assertThat(rod.figure(Term.ROD_LENGTH).orElseThrow().isLimit()).isTrue();
        assertThat(rod.figure(Term.BIG_END_BORE).orElseThrow().isLimit()).isFalse();
        assertThat(rod.figure(Term.SMALL_END_WIDTH)).isEmpty();
        assertThat(rod.word(Choice.ROD_METAL)).contains("billet_aluminium");
        assertThat(rod.offer())
                .isEqualTo(
                        new Offer(OptionalLong.of(9550), OptionalLong.of(490), "EUR", "Quillane", OptionalInt.of(21)));
        assertThat(rod.voucher()).isEqualTo(new Voucher(Voucher.Basis.MEASURED, "the owner", "2026-10-01", "B7"));
        assertThat(rod.note()).isEqualTo("with, a comma");
        assertThat(rod.place()).isEqualTo("rods.csv:4");
    }

    /** Trade words as the glossary has them; units in brackets, behind a space, behind an underscore. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "length [mm]|86.40|86.40 mm",
                "length mm|86.40|86.40 mm",
                "length_mm|86.40|86.40 mm",
                "Length (in)|3.4|3.4 in",
                "connecting_rod.length|86.40 mm|86.40 mm",
                "rod length [mm]|86.40|86.40 mm",
                "centre to centre [mm]|86.40|86.40 mm",
                "Center-to-center (mm)|86.40|86.40 mm",
                "length [mm]|3 3/8 in|3 3/8 in",
                "length [mm]|86.40 ± 0.03|86.40 mm ± 0.03 mm",
                "length [in]|3 3/8|3 3/8 in",
                "length [mm]|(86.40 ± 0.03)|86.40 mm ± 0.03 mm"
            })
    void headersAndCellsAreUnderstood(String header, String cell, String figure) {
        CataloguePart rod = only(csv("rod.csv", "code;" + header + "\nA;" + cell + "\n"));
        assertThat(figure(rod, Term.ROD_LENGTH)).isEqualTo(figure);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "length ±",
                "± length",
                "length tolerance [mm]",
                "length_tolerance",
                "length tol. mm",
                "length +/- [mm]",
                "length [± mm]"
            })
    void tolerancesHaveTheirOwnColumn(String header) {
        CataloguePart rod = only(csv("rod.csv", "code," + header + ",length [mm]\nA,±0.03,86.4\n"));
        assertThat(figure(rod, Term.ROD_LENGTH)).isEqualTo("86.4 mm ± 0.03 mm");
    }

    @Test
    void semicolonsAndTabsAllowDecimalCommas() {
        for (String mark : List.of(";", "\t")) {
            Imported read = csv("rod.csv", "code;length [mm];price [EUR]\r\nA;86,40;78,50\r\n".replace(";", mark));
            assertThat(only(read).figure(Term.ROD_LENGTH).orElseThrow().value().si())
                    .isEqualTo(86.40e-3);
            assertThat(only(read).offer().price()).hasValue(7850);
            assertThat(read.fates().get(0).remarks()).isEmpty();
        }
    }

    @Test
    void aByteOrderMarkASepLineAndBlankLinesAreTaken() {
        assertThat(only(csv("rod.csv", "\uFEFFsep=;\n\ncode;length [mm]\n;\n\nA;86,4\n"))
                        .place())
                .isEqualTo("rod.csv:6");
    }

    @Test
    void whatIsNotSaidIsUnknown() {
        CataloguePart rod = only(csv("rod.csv", "code,length [mm],metal,price [EUR]\nA,unknown,,\n"));
        assertThat(rod.figures()).isEmpty();
        assertThat(rod.words()).isEmpty();
        assertThat(rod.offer()).isEqualTo(Offer.NONE);
    }

    @ParameterizedTest
    @CsvSource({
        "connecting_rod.csv, connecting_rod",
        "Rods 2026.csv, connecting_rod",
        "lists/pistons_171.csv, piston",
        "head_gasket.csv, gasket",
        "donor-engines.csv, donor_engine",
        "valve springs.csv, valve_spring",
        "clutches.csv, clutch"
    })
    void theNameOfAFileTellsItsKind(String name, String kind) {
        assertThat(only(csv(name, "code\nA\n")).kind().key()).isEqualTo(kind);
    }

    @Test
    void theLineAboveTheHeaderTellsTheKindEvenFromASpreadsheet() {
        assertThat(only(csv(
                                "x.csv",
                                "\"# kind: piston\",,\n# invented: yes,,\ncode,rings.mass [g],mass [g]\nA,9,170\n"))
                        .figures())
                .containsOnlyKeys(Term.PISTON_MASS, Term.RING_MASS);
    }

    @Test
    void anUnbelievableFigureIsKeptWithARemark() {
        Imported read = csv("rod.csv", "code,length [mm]\nA,864.0\n");
        assertThat(only(read).figure(Term.ROD_LENGTH)).isPresent();
        assertThat(read.fates().get(0).remarks())
                .extracting(Note::message)
                .containsExactly("line 2, length [mm]: 864.0 mm is hard to believe; 40 mm to 260 mm is usual. "
                        + "Look at the unit again");
    }

    @Test
    void theSameRowTwiceIsSeen() {
        Imported read = csv("rod.csv", "code,length [mm]\nA,25.4\nB,1\nA,1 in\nA,25.5\n");
        assertThat(read.parts()).hasSize(2);
        assertThat(read.fates())
                .extracting(RowFate::outcome)
                .containsExactly(Outcome.KEPT, Outcome.KEPT, Outcome.SAME, Outcome.OTHER_FIGURES);
        assertThat(read.fates().get(2).other()).isEqualTo("rod.csv:2");
        assertThat(read.fates().get(3).reasons().get(0).message())
                .contains("connecting_rod.length 25.4 mm there, 25.5 mm here");
    }

    @Test
    void theSameCodeOfTwoVendorsIsTwoParts() {
        assertThat(csv("rod.csv", "code,vendor\nA,Osterby\nA,Quillane\n").parts())
                .hasSize(2);
    }

    @Test
    void severalFilesAreOneCatalogue() {
        Imported all = Imported.together(List.of(
                csv("a/rod.csv", "code,length [mm]\nA,80\nB,81\n"),
                csv("b/rod.csv", "code,length [mm]\nB,81\nA,82\nC,83\n"),
                csv("machining.csv", "code,operation,least [mm],most [mm]\nD,deck_cut,0.05,0.4\n")));
        assertThat(all.parts()).extracting(CataloguePart::code).containsExactly("A", "B", "C");
        assertThat(all.operations()).hasSize(1);
        assertThat(all.fates())
                .extracting(RowFate::outcome)
                .containsExactly(
                        Outcome.KEPT, Outcome.KEPT, Outcome.SAME, Outcome.OTHER_FIGURES, Outcome.KEPT, Outcome.KEPT);
        assertThat(all.isClean()).isFalse();
        assertThat(all.fates().get(2).other()).isEqualTo("a/rod.csv:3");
    }

    @Test
    void machineOperationsHaveRangeAndStep() {
        Imported read = csv("machine_operation.csv", """
                code,operation,least [mm],most [mm],step [mm],tolerance [mm],price [EUR],vendor
                H,small_end_hone,0.005,0.06,,0.003,14,Marn
                """);
        assertThat(read.isClean()).as(read.fates().toString()).isTrue();
        Operation hone = read.operations().get(0);
        assertThat(hone.kind()).isEqualTo(Operation.Kind.SMALL_END_HONE);
        assertThat(hone.most()).isEqualTo(ExactLength.ofMillimetres("0.06"));
        assertThat(hone.step()).isNull();
        assertThat(hone.tolerance()).isEqualTo(ExactLength.ofMillimetres("0.003"));
        assertThat(hone.offer().price()).hasValue(1400);
    }

    @Test
    void aBrokenQuotationMarkCostsItsRowOnly() {
        Imported read = csv("rod.csv", "code,name,length [mm]\nA,\"one,80\nB,two,81\nC,\"th\"ree,82\nD,four,83\n");
        assertThat(read.parts()).extracting(CataloguePart::code).containsExactly("B", "D");
        assertThat(read.fates()).extracting(RowFate::line).containsExactly(2, 3, 4, 5);
    }

    @Test
    void aLineBreakInANoteIsASpace() {
        assertThat(only(csv("rod.csv", "code,note\nA,\"one\ntwo\"\n")).note()).isEqualTo("one two");
    }

    @Test
    void aColumnMayBeLeftOut() {
        assertThat(only(csv("rod.csv", "code,#shelf,length [mm],\nA,12,80,\n")).figures())
                .hasSize(1);
    }

    @Test
    void yamlHoldsSeveralKinds() {
        Imported read = yaml("""
                catalogue: 1
                invented: yes
                crankshafts:
                  - {code: M-565, stroke: 56.50 mm ± 0.02 mm, metal: iron, price: 120 EUR}
                machine_operations:
                  - {code: H, operation: small_end_hone, least: 0.005 mm, most: 0.06 mm, price: 14 EUR}
                sprockets:
                  - code: S
                    teeth: 12
                gaskets:
                  - {code: G, thickness: 1.02 mm, thickness_tolerance: 0.03 mm}
                """);
        assertThat(read.faults()).isEmpty();
        assertThat(read.isClean()).as(read.fates().toString()).isTrue();
        assertThat(read.parts()).hasSize(3).allMatch(CataloguePart::invented);
        assertThat(read.operations()).hasSize(1);
        assertThat(read.parts().get(0).place()).isEqualTo("parts.yaml:4");
        assertThat(figure(read.parts().get(0), Term.STROKE)).isEqualTo("56.50 mm ± 0.02 mm");
        assertThat(read.parts().get(0).figure(Term.STROKE).orElseThrow().isLimit())
                .isFalse();
        assertThat(figure(read.parts().get(2), Term.GASKET_THICKNESS)).isEqualTo("1.02 mm ± 0.03 mm");
        assertThat(read.parts()
                        .get(2)
                        .figure(Term.GASKET_THICKNESS)
                        .orElseThrow()
                        .isLimit())
                .isTrue();
    }

    @Test
    void yamlKeepsTheGoodEntriesAndSaysWhereTheBadOnesAre() {
        Imported read = yaml("""
                catalogue: 1
                crankshafts:
                  - {code: A, stroke: 56.50 mm}
                  - {code: B, stroke: 56.50}
                  - {code: C, strok: 56.50 mm}
                  - {stroke: 56.50 mm}
                  - {code: D, stroke: [1 mm, 2 mm]}
                """);
        assertThat(read.parts()).extracting(CataloguePart::code).containsExactly("A");
        assertThat(read.fates())
                .flatExtracting(RowFate::reasons)
                .extracting(Fault::message)
                .satisfiesExactly(
                        m -> assertThat(m)
                                .startsWith(
                                        "line 4, column 23, crankshafts[2].stroke: '56.50' has no unit; write 56.50 mm or 56.50 in (allowed"),
                        m -> assertThat(m).contains("crankshafts[3].strok").contains("did you mean stroke?"),
                        m -> assertThat(m).contains("crankshafts[4].code: is missing"),
                        m -> assertThat(m).contains("is a list; a single value is wanted here"));
    }

    @Test
    void yamlFaultsOfTheWholeFile() {
        assertThat(yaml("crankshafts: []\n").faults().get(0).message()).contains("make 'catalogue: 1' the first line");
        assertThat(yaml("catalogue: 2\n").faults().get(0).message()).contains("newer format");
        assertThat(yaml("catalogue: 1\ncrankshaft: []\n").faults().get(0).message())
                .contains("did you mean crankshafts?");
        assertThat(yaml("longthrow: 1\nengine: {name: a}\n").faults().get(0).message())
                .contains("this is a build file");
    }
}
