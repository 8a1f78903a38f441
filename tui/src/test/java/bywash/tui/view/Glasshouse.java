package bywash.tui.view;

import bywash.ingest.recording.BrokenEntry;
import bywash.ingest.recording.EntryJson;
import bywash.ingest.site.SiteFileReader;
import bywash.ingest.site.SiteFileResult.Good;
import bywash.rules.event.OperatorEntry;
import bywash.rules.site.Site;

/** The site that entries of tests are held against, and the entries themselves. */
final class Glasshouse {
    static final Site SITE =
            ((Good) SiteFileReader.read("""
                    name: A glasshouse
                    id: glasshouse
                    time-zone: UTC
                    elevation: 0 m
                    stocking: fish
                    broker: {url: "mqtt://127.0.0.1:1883"}
                    mains: {disinfectant: none}
                    vessels:
                      sump: {role: sump, shape: {kind: box, length: 1 m, width: 1 m, height: 1 m}, overflow: 0.9 m}
                      reserve: {role: reserve, volume: 900 L, feeds: sump}
                      fish-tank: {role: fish-tank, volume: 1500 L}
                    probes:
                      - {id: sump-level, vessel: sump, quantity: level, topic: a, payload: number, unit: cm, every: 10 s}
                      - {id: fish-do, vessel: fish-tank, quantity: dissolved-oxygen, topic: b, payload: number, unit: mg/L, every: 30 s}
                    """, "glasshouse.yaml")).siteFile().site();

    private Glasshouse() {}

    /** With single quotes for double ones, from the word of the entry on. */
    static OperatorEntry entry(String fields) throws BrokenEntry {
        return EntryJson.fromJson(("{'time':'2026-05-04T06:00:00.000Z','operator':" + fields + "}").replace('\'', '"'));
    }
}
