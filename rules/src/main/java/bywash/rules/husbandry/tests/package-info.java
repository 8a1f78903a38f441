/**
 * When each manual test of the water is due: the routine, what an incident asks for, and what bacteria without fish ask for,
 * in one schedule. Pure; sees entries, the recovery's schedule and the plan without fish.
 */
@NullMarked
package bywash.rules.husbandry.tests;

import org.jspecify.annotations.NullMarked;
