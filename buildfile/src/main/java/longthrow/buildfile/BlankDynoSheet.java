package longthrow.buildfile;

/** A sheet of runs to begin with: it reads as it stands, and its remarks say what is written where. */
final class BlankDynoSheet {
    static final String TEXT = """
            longthrow_dyno: 1
            # A sheet of runs on a dynamometer. Write in place of the words in <>; what is not known is left out.
            name: <what was tried>
            units: metric                # or inch: which comes first in print
            # To what runs are corrected: iso_1585, sae_j1349_2004, sae_j1349_1990, sae_j607, din_70020; none for figures as read.
            standard: iso_1585
            # kind: table for figures as the dynamometer showed them; inertia_drum, brake or road for a logger's files.
            bench: {kind: table, name: <which>}
            # Sessions in the order in which they were run. Between two runs of a session nothing is changed.
            # Run the old setup first, then the new one, then the old one again: else drift cannot be told from a gain.
            sessions:
              - name: A1
                setup: <as it was>
                # date: 2026-05-02
                # Read at the bench at that time. Pressure is the barometer's at the place, not brought to sea level.
                # air: {pressure: 99.6 kPa, temperature: 19 °C, humidity: 46 %}
                runs: []
                # In place of []: one line or several for each run, in the order in which they were run:
                #   - {peak: 9.38 kW}
                #   - name: second
                #     rows:
                #       3000 rpm: 13.1 N·m
                #       3200 rpm: 13.4 N·m
                #   - {log: run-3.csv}
                #   - {peak: 9.71 kW, aside: the throttle was not open}
              - name: B
                setup: <what was changed>
                runs: []
              - name: A2
                setup: <as it was>
                runs: []
            # A reference engine, run on every day, tells whether the dynamometer is at its usual level; 'dyno' where a session ran on another one:
            #  - name: R1
            #    setup: <the reference engine>
            #    check: yes
            #    date: 2026-05-02
            #    dyno: <another than the bench's>
            #    runs: []
            """;

    private BlankDynoSheet() {}
}
