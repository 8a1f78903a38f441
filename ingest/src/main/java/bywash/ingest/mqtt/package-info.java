/**
 * The live feed over MQTT. The only package that sees the MQTT client.
 */
@NullMarked
package bywash.ingest.mqtt;

import org.jspecify.annotations.NullMarked;
