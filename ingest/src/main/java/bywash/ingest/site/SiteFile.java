package bywash.ingest.site;

import bywash.rules.site.Site;
import java.util.List;

/** A site file as read: what the water rules need, and how its feed comes in. */
public record SiteFile(Site site, BrokerSettings broker, List<ProbeBinding> bindings) {
    public SiteFile {
        bindings = List.copyOf(bindings);
    }
}
