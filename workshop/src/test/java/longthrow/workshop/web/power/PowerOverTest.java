package longthrow.workshop.web.power;

import static org.assertj.core.api.Assertions.assertThat;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import longthrow.buildfile.DynoSheetFile;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Shaking;
import longthrow.core.answer.TorqueCurve;
import longthrow.core.answer.TorqueCurve.Row;
import longthrow.core.answer.TorqueCurve.Standing;
import longthrow.core.dyno.Dyno;
import longthrow.core.dyno.Logs;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Units;
import longthrow.workshop.SampleAnswer;
import longthrow.workshop.web.Dynos;
import org.junit.jupiter.api.Test;

/** What the page Power lays out of runs over a prediction; both invented. The sums of a whole curve would take a minute, so the prediction is written down. */
class PowerOverTest {
    private static final String SHEET = """
            longthrow_dyno: 1
            name: a <brake> of ours
            invented: yes
            standard: iso_1585
            bench: {kind: table, drive_efficiency: 1}
            sessions:
              - name: A
                setup: stock <b>
                air: {pressure: 99.6 kPa, temperature: 19 °C, humidity: 46 %}
                runs:
                  - {rows: {2000 rpm: 9 N·m ± 0.3 N·m, 2500 rpm: 9 N·m ± 0.3 N·m, 3000 rpm: 9 N·m ± 0.3 N·m}}
                  - {rows: {2000 rpm: 9.5 N·m ± 0.3 N·m, 2500 rpm: 9.5 N·m ± 0.3 N·m, 3000 rpm: 9.5 N·m ± 0.3 N·m}}
                  - {rows: {2000 rpm: 9.4 N·m ± 0.3 N·m, 2500 rpm: 9.5 N·m ± 0.3 N·m, 3000 rpm: 9.5 N·m ± 0.3 N·m}}
                  - {rows: {2000 rpm: 9.5 N·m ± 0.3 N·m, 2500 rpm: 9.4 N·m ± 0.3 N·m, 3000 rpm: 9.5 N·m ± 0.3 N·m}}
            """;

    private static Row row(int hundred) {
        double speed = Units.RPM.toSi(100 * hundred);
        Measured torque = Measured.of(10, List.of(Source.at95("p", Source.Kind.ASSUMED, "p", 1)));
        return hundred > 28
                ? new Row(speed, Standing.REFUSED, "a limit is passed", List.of(), List.of(), Optional.empty())
                : new Row(
                        speed,
                        Standing.APPROVED,
                        "",
                        List.of(new Shaking.Figure("torque", "torque", Dimension.TORQUE, torque)),
                        List.of(),
                        Optional.empty());
    }

    private static Answer predicted() {
        TorqueCurve curve = new TorqueCurve(
                        "",
                        IntStream.rangeClosed(10, 16).mapToObj(i -> row(2 * i)).toList(),
                        List.of(),
                        Double.NaN,
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of("so it is"),
                        List.of(),
                        Optional.empty())
                .with(new TorqueCurve.Air(Measured.exact(1e5), Measured.exact(298.15), Measured.exact(0.3)));
        return SampleAnswer.named("invented").withTorque(curve);
    }

    private static String page(Dynos.Laid laid) {
        StringOutput out = new StringOutput();
        TemplateEngine.createPrecompiled(
                        null, ContentType.Html, PowerOverTest.class.getClassLoader(), "longthrow.workshop.web.pages")
                .render("poweranswer.jte", Map.of("answer", PowerAnswer.of(predicted(), laid, "/b/7", "power")), out);
        return out.toString();
    }

    private static Answer runs() {
        return Dyno.of(DynoSheetFile.read(SHEET).sheet().orElseThrow(), Logs.none());
    }

    @Test
    void runsStandOverTheCurveWithTheirWordAndATable() {
        String page = page(new Dynos.Laid(List.of("my runs.yaml"), List.of(runs()), List.of(), List.of()));
        assertThat(page)
                .contains(
                        "Measured on the dynamometer",
                        "href=\"/b/7/dyno?sheet=my+runs.yaml\"",
                        "a &lt;brake&gt; of ours",
                        "stock &lt;b&gt;: agrees.",
                        "measured: stock &lt;b&gt;",
                        "<th scope=\"row\">2500 rpm</th>",
                        "<td>none: refused</td>")
                .doesNotContain("<brake>", "<b>: agrees", "NaN", "being read");
    }

    /** A sheet with logs that nobody looked at yet: the curve is there at once, and the page asks for the rest; without script there is a link. */
    @Test
    void whatIsNotReadYetIsAskedForAfterwards() {
        assertThat(page(new Dynos.Laid(List.of(), List.of(), List.of("slow.yaml"), List.of("torn.yaml"))))
                .contains(
                        "Torque and power over speed",
                        "The logs of slow.yaml are being read",
                        "hx-get=\"/b/7/power/answer\"",
                        "hx-target=\"#power-whole\"",
                        "href=\"/b/7/power?now=1\"",
                        "href=\"/b/7/dyno?sheet=torn.yaml\"")
                .doesNotContain("class=\"measured\"");
    }

    @Test
    void withoutSheetsItSaysWhereTheyGo() {
        assertThat(page(new Dynos.Laid(List.of(), List.of(), List.of(), List.of())))
                .contains("href=\"/b/7/dyno\"")
                .doesNotContain("Measured on the dynamometer");
    }
}
