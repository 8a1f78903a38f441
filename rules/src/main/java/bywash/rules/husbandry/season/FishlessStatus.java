package bywash.rules.husbandry.season;

import bywash.rules.husbandry.bacteria.CheckItem;
import bywash.rules.husbandry.bacteria.FishlessPlan;
import java.util.List;

/**
 * While there are no fish: the bacteria's next meal, and what must hold before fish come back.
 *
 * @param products the dose in products, with amounts; empty where nothing is to be added
 * @param species whose bands the checklist uses
 * @param checklist in the order to go through it
 * @param ready whether every line that the tool can answer says yes
 */
public record FishlessStatus(
        FishlessPlan plan, List<String> products, String species, List<CheckItem> checklist, boolean ready) {
    public FishlessStatus {
        products = List.copyOf(products);
        checklist = List.copyOf(checklist);
    }
}
