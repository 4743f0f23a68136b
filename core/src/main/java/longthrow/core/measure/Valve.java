package longthrow.core.measure;

import java.util.List;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/** The terms of one valve and its lobe. */
enum Valve {
    INTAKE(
            Part.INTAKE_VALVE,
            Term.INTAKE_LIFT,
            Term.INTAKE_LASH,
            Term.INTAKE_DURATION,
            Term.INTAKE_LOBE_CENTRE,
            Term.INTAKE_OPENS,
            Term.INTAKE_CLOSES),
    EXHAUST(
            Part.EXHAUST_VALVE,
            Term.EXHAUST_LIFT,
            Term.EXHAUST_LASH,
            Term.EXHAUST_DURATION,
            Term.EXHAUST_LOBE_CENTRE,
            Term.EXHAUST_OPENS,
            Term.EXHAUST_CLOSES);

    final Part part;
    final Term lift;
    final Term lash;
    final Term duration;
    final Term centre;
    final Term opens;
    final Term closes;

    Valve(Part part, Term lift, Term lash, Term duration, Term centre, Term opens, Term closes) {
        this.part = part;
        this.lift = lift;
        this.lash = lash;
        this.duration = duration;
        this.centre = centre;
        this.opens = opens;
        this.closes = closes;
    }

    /** By the word of a lift table. */
    static Valve of(String word) {
        return word.equals("intake") ? INTAKE : EXHAUST;
    }

    /** 1 where the lobe centre is counted after top dead centre, -1 where before. */
    int sign() {
        return this == INTAKE ? 1 : -1;
    }

    /** Key of the valve in lift tables. */
    String word() {
        return this == INTAKE ? "intake" : "exhaust";
    }

    /** The events that a card or a wheel tells. */
    List<Term> events() {
        return List.of(opens, closes);
    }
}
