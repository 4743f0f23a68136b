package longthrow.core.recording;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Unit;
import longthrow.core.quantity.Units;

/**
 * What a logger of a bench may write in a column.
 *
 * <p>The words each answers to, in a header, are those of the trade in English, German, French, Spanish and Italian, whole or as they are
 * usually cut short: common practice, no source. So are the units in which loggers write it, and the range in which a figure of it can be: wide
 * on purpose, as it only tells which unit cannot be meant.
 */
public enum Channel {
    TIME(
            "time",
            "time",
            Dimension.TIME,
            "s|ms|min|h",
            0,
            1e9,
            "time|t|elapsed time|elapsed|timestamp|time"
                    + " stamp|zeit|messzeit|temps|tiempo|tempo|seconds|sec|secs|s|ms|milliseconds|sekunden|secondes|segundos|secondi|clock|uhrzeit|heure|hora|ora|logger"
                    + " time|run time|laufzeit|zeitstempel|date time|datetime|datum uhrzeit"),
    ENGINE_SPEED(
            "engine_speed",
            "engine speed",
            Dimension.ROTATIONAL_SPEED,
            "rpm|rad/s|r/s",
            0,
            2100,
            "engine speed|rpm|n|engine rpm|erpm|rev|revs|engine|crank speed|crank rpm|motor speed|motor"
                    + " rpm|drehzahl|motordrehzahl|nmot|n mot|n motor|n engine|regime|régime|regime moteur|régime"
                    + " moteur|tr min|revoluciones|régimen|regimen|rpm motor|giri|giri motore|regime motore|speed engine|u"
                    + " min|upm|tacho|tach|tachometer"),
    DRUM_SPEED(
            "drum_speed",
            "drum speed",
            Dimension.ROTATIONAL_SPEED,
            "rpm|rad/s|r/s",
            0,
            1100,
            "drum speed|drum rpm|drum|drpm|roller speed|roller rpm|roller|flywheel speed|flywheel rpm|dyno rpm|dyno"
                    + " speed|brake rpm|brake speed|trommel|trommeldrehzahl|rolle|rollendrehzahl|n rolle|n trommel|n"
                    + " drum|tambour|rouleau|régime rouleau|vitesse rouleau|rodillo|rpm rodillo|tambor|rullo|rulli|giri"
                    + " rullo|output shaft speed|shaft speed|shaft rpm|axle rpm|axle speed"),
    ROAD_SPEED(
            "road_speed",
            "road speed",
            Dimension.SPEED,
            "km/h|mph|m/s",
            0,
            150,
            "road speed|speed|velocity|v|gps speed|ground speed|vehicle speed|wheel speed|geschwindigkeit|tempo km"
                    + " h|vitesse|vitesse gps|velocidad|velocità|velocita|kmh|kph|km h|mph|v gps|speed gps|gps v"),
    FORCE(
            "force",
            "force at the arm",
            Dimension.FORCE,
            "N|kgf|lbf|kN",
            -20_000,
            20_000,
            "force|load|load cell|loadcell|cell|f|brake force|arm force|kraft|kraftmessdose|bremskraft|force"
                    + " frein|charge|cellule|fuerza|celda|célula de carga|celula de carga|forza|cella|cella di"
                    + " carico|scale"),
    TORQUE(
            "torque",
            "torque of the brake",
            Dimension.TORQUE,
            "N·m|lb-ft|lb-in|kgf·m|kgf·cm",
            -3000,
            3000,
            "torque|brake torque|tq|trq|m|md|dyno torque|shaft torque|engine torque|drehmoment|moment|couple|par|par"
                    + " motor|coppia|momento|nm|nm torque"),
    POWER(
            "power",
            "power",
            Dimension.POWER,
            "kW|hp|PS|W",
            -300_000,
            300_000,
            "power|p|pwr|hp|bhp|kw|ps|cv|brake power|horsepower|engine power|wheel"
                    + " power|leistung|motorleistung|radleistung|puissance|potencia|potenza"),
    LAMBDA(
            "lambda",
            "lambda",
            Dimension.RATIO,
            "",
            0.4,
            3,
            "lambda|λ|lam|lambda1|lambda 1|wideband|o2 lambda|wbo2|lambdawert|richesse lambda|sonda lambda|sonde"
                    + " lambda|lambdasonde"),
    AIR_FUEL_RATIO(
            "air_fuel_ratio",
            "air-fuel ratio",
            Dimension.RATIO,
            "|:1",
            3,
            40,
            "afr|air fuel|air fuel ratio|a f|a f ratio|af ratio|air to fuel|luftverhältnis afr|kraftstoff luft|rapport"
                    + " air carburant|relacion aire combustible|relación aire combustible|rapporto aria carburante"),
    EXHAUST_TEMPERATURE(
            "exhaust_temperature",
            "exhaust temperature",
            Dimension.TEMPERATURE,
            "°C|°F|K",
            230,
            1500,
            "exhaust temperature|exhaust temp|egt|egt1|egt 1|exh temp|exhaust gas temperature|exhaust gas"
                    + " temp|exhaust|t exh|t exhaust|abgastemperatur|abgastemp|abgas|t abgas|température échappement|temp"
                    + " echappement|temperature echappement|échappement|temperatura escape|temp escape|temperatura"
                    + " scarico|temp scarico|t scarico"),
    HEAD_TEMPERATURE(
            "head_temperature",
            "head temperature",
            Dimension.TEMPERATURE,
            "°C|°F|K",
            230,
            700,
            "head temperature|head temp|cht|cylinder head temperature|cylinder head temp|cyl temp|plug temp|spark plug"
                    + " temperature|t head|engine temp|engine temperature|coolant temp|coolant|water"
                    + " temp|zylinderkopftemperatur|kopftemperatur|kopftemp|zylinderkopf|zkt|motortemperatur|température"
                    + " culasse|temperature culasse|temp culasse|culasse|temperatura culata|temp culata|culata|temperatura"
                    + " testa|temp testa|temperatura cilindro|testa"),
    OIL_TEMPERATURE(
            "oil_temperature",
            "oil temperature",
            Dimension.TEMPERATURE,
            "°C|°F|K",
            230,
            500,
            "oil temperature|oil temp|oil t|t oil|oil|öltemperatur|oeltemperatur|öltemp|oeltemp|t öl|t oel|température"
                    + " huile|temperature huile|temp huile|huile|temperatura aceite|temp aceite|aceite|temperatura"
                    + " olio|temp olio|olio"),
    FUEL_FLOW(
            "fuel_flow",
            "fuel flow by mass",
            Dimension.MASS_FLOW,
            "g/s|kg/h|g/min|lb/h",
            0,
            0.1,
            "fuel flow|fuel mass flow|fuel|fuel rate|fuel"
                    + " consumption|kraftstoffverbrauch|verbrauch|kraftstoff|kraftstoffmassenstrom|débit carburant|debit"
                    + " carburant|consommation|consumo|caudal combustible|portata carburante|consumo carburante"),
    FUEL_VOLUME_FLOW(
            "fuel_volume_flow",
            "fuel flow by volume",
            Dimension.VOLUME_FLOW,
            "cc/min|L/min|cc/s",
            0,
            1e-4,
            "fuel volume flow|fuel volume|volumetric fuel flow|kraftstoffvolumenstrom|fuel cc"),
    AIR_PRESSURE(
            "air_pressure",
            "air pressure",
            Dimension.PRESSURE,
            "kPa|hPa|mbar|bar|inHg|mmHg|psi|Pa",
            50_000,
            110_000,
            "air pressure|baro|barometer|barometric pressure|atmospheric pressure|ambient pressure|baro pressure|p"
                    + " amb|p air|p baro|atm|luftdruck|umgebungsdruck|p luft|pression atmosphérique|pression"
                    + " atmospherique|pression air|presión atmosférica|presion atmosferica|pressione atmosferica|station"
                    + " pressure"),
    AIR_TEMPERATURE(
            "air_temperature",
            "air temperature",
            Dimension.TEMPERATURE,
            "°C|°F|K",
            230,
            345,
            "air temperature|air temp|intake temp|intake temperature|intake air temperature|inlet air temp|inlet"
                    + " temp|iat|ambient temp|ambient temperature|ambient|act|t amb|t air|t"
                    + " intake|lufttemperatur|ansauglufttemperatur|ansaugtemperatur|umgebungstemperatur|t luft|température"
                    + " air|temperature air|temp air|temperatura aire|temp aire|temperatura aria|temp aria|room temp"),
    AIR_HUMIDITY(
            "air_humidity",
            "air humidity",
            Dimension.RATIO,
            "%|",
            0,
            1,
            "humidity|air humidity|relative humidity|rh|rel humidity|hum|luftfeuchte|luftfeuchtigkeit|feuchte|rel"
                    + " feuchte|humidité|humidite|humedad|umidità|umidita"),
    MANIFOLD_PRESSURE(
            "manifold_pressure",
            "manifold pressure",
            Dimension.PRESSURE,
            "kPa|hPa|mbar|bar|inHg|psi|Pa",
            10_000,
            300_000,
            "manifold pressure|map|manifold|manifold absolute pressure|boost|intake pressure|inlet pressure|p man|p"
                    + " intake|saugrohrdruck|ladedruck|pression admission|pression collecteur|presión admisión|presion"
                    + " admision|presión colector|pressione collettore|pressione aspirazione"),
    THROTTLE(
            "throttle",
            "throttle",
            Dimension.RATIO,
            "%|",
            -0.1,
            1.1,
            "throttle|tps|throttle position|throttle"
                    + " pos|tp|wot|pedal|drosselklappe|dk|gas|gasgriff|papillon|accélérateur|accelerateur|mariposa|acelerador"
                    + "|farfalla|acceleratore"),
    MARKER(
            "marker",
            "marker or run number",
            Dimension.COUNT,
            "",
            -1e9,
            1e9,
            "marker|mark|run|run number|run no|run"
                    + " nr|lap|event|trigger|beacon|gear|session|sample|index|row|nr|no|lauf|marke|markierung|messung|runde|repère"
                    + "|repere|essai|marca|prueba|evento|prova|giro"),
    UNKNOWN("unknown", "not known", Dimension.RATIO, "", -Double.MAX_VALUE, Double.MAX_VALUE, "");

    private final String key;
    private final String label;
    private final Dimension dimension;

    @SuppressWarnings("ImmutableEnumChecker") // made by toList, which cannot be changed
    private final List<Unit> units;

    private final double least;
    private final double most;

    @SuppressWarnings("ImmutableEnumChecker") // made by toList, which cannot be changed
    private final List<String> words;

    Channel(String key, String label, Dimension dimension, String units, double least, double most, String words) {
        this.key = key;
        this.label = label;
        this.dimension = dimension;
        this.units = units.isEmpty()
                ? List.of(bare(dimension))
                : Arrays.stream(units.split("\\|", -1))
                        .map(symbol -> symbol.isEmpty() ? bare(dimension) : Unit.of(dimension, symbol))
                        .toList();
        this.least = least;
        this.most = most;
        this.words = words.isEmpty()
                ? List.of()
                : Arrays.stream(words.split("\\|", -1))
                        .map(Channel::plain)
                        .distinct()
                        .toList();
    }

    private static Unit bare(Dimension dimension) {
        return dimension == Dimension.COUNT ? Units.BARE_COUNT : Units.BARE_RATIO;
    }

    /** Its name in files and addresses. */
    public String key() {
        return key;
    }

    /** Its name for people. */
    public String label() {
        return label;
    }

    /** What kind of quantity it is; of one that is not known this says nothing. */
    public Dimension dimension() {
        return dimension;
    }

    /** The units in which loggers write it, the most usual first. */
    public List<Unit> units() {
        return units;
    }

    /** Least value that it can have [coherent SI]. */
    public double least() {
        return least;
    }

    /** Greatest value that it can have [coherent SI]. */
    public double most() {
        return most;
    }

    /** Whether it can have this value [coherent SI]; false for NaN. */
    public boolean canBe(double si) {
        return si >= least && si <= most;
    }

    /** The words it answers to, as {@link #plain} writes them. */
    public List<String> words() {
        return words;
    }

    /** The channel of this key, if there is one. */
    public static Optional<Channel> ofKey(String key) {
        return Arrays.stream(values()).filter(c -> c.key.equals(key)).findFirst();
    }

    /** The channel that answers to a header's word, however its words are joined or parted; no word has two, by test. */
    public static Optional<Channel> answeringTo(String header) {
        return Optional.ofNullable(Words.CHANNELS.get(plain(header).replace(" ", "")));
    }

    /** Made when first asked, as constants must be there before. */
    private static final class Words {
        private static final Map<String, Channel> CHANNELS = new HashMap<>();

        static {
            for (Channel channel : values()) {
                channel.words.forEach(word -> CHANNELS.putIfAbsent(word.replace(" ", ""), channel));
            }
        }
    }

    /** A header's word as it is compared: small letters, anything but letters and digits a single blank, capitals within a word parted. */
    public static String plain(String header) {
        StringBuilder plain = new StringBuilder();
        char before = ' ';
        for (int i = 0; i < header.length(); i++) {
            char c = header.charAt(i);
            if (Character.isLetterOrDigit(c)) {
                if (Character.isUpperCase(c) && Character.isLowerCase(before)) {
                    plain.append(' ');
                }
                plain.append(c);
            } else if (plain.length() > 0 && plain.charAt(plain.length() - 1) != ' ') {
                plain.append(' ');
            }
            before = c;
        }
        return plain.toString().strip().toLowerCase(Locale.ROOT);
    }
}
