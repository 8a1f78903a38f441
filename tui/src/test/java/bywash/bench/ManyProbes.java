package bywash.bench;

import bywash.ingest.site.SiteFile;
import bywash.ingest.site.SiteFileReader;
import bywash.ingest.site.SiteFileResult;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** A site of many fish tanks with an oxygen probe in each. */
final class ManyProbes {
    private ManyProbes() {}

    static String topic(int probe) {
        return "bench/" + probe;
    }

    /** A reading each 10 s. */
    static SiteFile site(int port, int probes) {
        return site(port, probes, 10);
    }

    /** @param every seconds between a probe's readings */
    static SiteFile site(int port, int probes, int every) {
        String head = """
                name: bench
                id: bench
                time-zone: UTC
                elevation: 0 m
                stocking: fish
                units: metric
                broker: {url: "mqtt://127.0.0.1:%d"}
                mains: {disinfectant: chlorine, residual: 1 mg/L, ph: 7.5, alkalinity: 100 mg/L, temperature: 12 Cel}
                vessels:
                  sump: {role: sump, volume: 500 L}
                """.formatted(port);
        String tanks = each(probes, "  tank-%1$d: {role: fish-tank, volume: 1000 L}\n");
        String lines = each(
                probes,
                "  - {id: do-%1$d, vessel: tank-%1$d, quantity: dissolved-oxygen, topic: bench/%1$d, payload: number,"
                        + " unit: mg/L, every: " + every + " s}\n");
        if (SiteFileReader.read(head + tanks + "probes:\n" + lines, "bench.yaml") instanceof SiteFileResult.Good good) {
            return good.siteFile();
        }
        throw new IllegalStateException("the bench's site is faulty");
    }

    private static String each(int times, String line) {
        return IntStream.range(0, times).mapToObj(line::formatted).collect(Collectors.joining());
    }
}
