/**
 * Features for a GIS as a GeoPackage, which is a SQLite file by its standard. Start with {@link
 * org.ouzelbook.tracker.exchange.geopackage.GeoPackageFile}. Depends on {@code tracker.domain} and {@code exchange.export}.
 */
@NullMarked
package org.ouzelbook.tracker.exchange.geopackage;

import org.jspecify.annotations.NullMarked;
