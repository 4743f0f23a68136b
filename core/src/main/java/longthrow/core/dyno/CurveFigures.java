package longthrow.core.dyno;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.DynoRuns;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.Dimension;
import longthrow.core.recording.Channel;
import longthrow.core.reduce.AlongCurve;
import longthrow.core.reduce.Peak;
import longthrow.core.reduce.RunCurve;

/** A run that was brought to a curve. Between two of its speeds torque is straight. */
record CurveFigures(RunCurve curve) implements RunFigures {
    @Override
    public boolean isCurve() {
        return true;
    }

    @Override
    public double[] reach() {
        return new double[] {curve.at(0).speed(), curve.at(curve.size() - 1).speed()};
    }

    @Override
    public List<Double> speeds() {
        return List.of();
    }

    @Override
    public double torque(double speed) {
        return RunFigures.between(everySpeed(), i -> curve.at(i).torque().value(), speed);
    }

    @Override
    public double half(double speed) {
        return RunFigures.between(everySpeed(), i -> curve.at(i).wholeTorque().expanded(), speed);
    }

    private double[] everySpeed() {
        return IntStream.range(0, curve.size())
                .mapToDouble(i -> curve.at(i).speed())
                .toArray();
    }

    /** 95 %, of what measures the fuel; common practice, no source. */
    private static final double FUEL_METER = 0.02;

    /** What is taken of it, to be told. */
    static DefaultUsed fuelMeter() {
        return new DefaultUsed(
                "runs.log",
                "what measures the fuel is right to ± 2 % (95 %), all runs alike",
                "common practice, no source");
    }

    @Override
    public List<DynoRuns.Beside> beside() {
        List<DynoRuns.Beside> all = new ArrayList<>();
        for (AlongCurve along : curve.beside()) {
            Dimension dimension = Arrays.stream(Channel.values())
                    .filter(c -> c.label().equals(along.name()))
                    .findFirst()
                    .orElseThrow()
                    .dimension();
            List<DynoRuns.Point> points = new ArrayList<>();
            for (int i = 0; i < curve.size(); i++) {
                if (!Double.isNaN(along.value(i))) {
                    points.add(new DynoRuns.Point(
                            curve.at(i).speed(), along.value(i), Source.NORMAL_95 * along.standardUncertainty(i)));
                }
            }
            all.add(new DynoRuns.Beside(along.name(), dimension, points));
        }
        if (curve.fuelFlow().isPresent()) {
            Measured meter = Measured.of(
                    1, List.of(Source.at95("dyno fuel meter", Source.Kind.INSTRUMENT, "fuel meter", FUEL_METER)));
            List<Optional<Measured>> consumption = curve.consumption(meter);
            List<DynoRuns.Point> points = new ArrayList<>();
            for (int i = 0; i < curve.size(); i++) {
                double speed = curve.at(i).speed();
                consumption.get(i).ifPresent(c -> points.add(new DynoRuns.Point(speed, c.value(), c.expanded())));
            }
            all.add(new DynoRuns.Beside("fuel for the work done", Dimension.SPECIFIC_FUEL_CONSUMPTION, points));
        }
        return all;
    }

    @Override
    public boolean hasPeakInside(Dimension dimension) {
        return switch (peakOf(dimension).standing()) {
            case MAY_LIE_BELOW, MAY_LIE_ABOVE -> false;
            case SHOWN, NOT_SHOWN -> true;
        };
    }

    private Peak peakOf(Dimension dimension) {
        return dimension == Dimension.POWER ? curve.powerPeak() : curve.torquePeak();
    }

    @Override
    public Optional<DynoRuns.Peak> peak(Dimension dimension) {
        Peak peak = peakOf(dimension);
        Measured value = peak.value();
        return Optional.of(new DynoRuns.Peak(
                value,
                peak.speed(),
                peak.lowSpeed(),
                peak.highSpeed(),
                switch (peak.standing()) {
                    case SHOWN -> "the curve falls on both sides";
                    case MAY_LIE_BELOW -> "it may be higher below the lowest speed of the run";
                    case MAY_LIE_ABOVE -> "it may be higher above the highest speed of the run";
                    case NOT_SHOWN -> "the curve is flat within its doubt";
                }));
    }
}
