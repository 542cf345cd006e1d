CREATE TABLE gpkg_extensions (
  table_name TEXT,
  column_name TEXT,
  extension_name TEXT NOT NULL,
  definition TEXT NOT NULL,
  scope TEXT NOT NULL,
  CONSTRAINT ge_tce UNIQUE (table_name, column_name, extension_name)
);
CREATE TABLE gpkgext_relations (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  base_table_name TEXT NOT NULL,
  base_primary_column TEXT NOT NULL DEFAULT 'id',
  related_table_name TEXT NOT NULL,
  related_primary_column TEXT NOT NULL DEFAULT 'id',
  relation_name TEXT NOT NULL,
  mapping_table_name TEXT NOT NULL UNIQUE
);
CREATE TABLE photos (
  id INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL,
  data BLOB NOT NULL,
  content_type TEXT NOT NULL,
  photo_id TEXT,
  taken TEXT,
  depth_mm INTEGER
);
CREATE TABLE pits_photos (
  base_id INTEGER NOT NULL,
  related_id INTEGER NOT NULL
);
INSERT INTO gpkg_extensions VALUES
  ('gpkgext_relations', NULL, 'gpkg_related_tables', 'http://www.opengis.net/doc/IS/gpkg-rte/1.0', 'read-write'),
  ('pits_photos', NULL, 'gpkg_related_tables', 'http://www.opengis.net/doc/IS/gpkg-rte/1.0', 'read-write');
INSERT INTO gpkgext_relations
  (base_table_name, base_primary_column, related_table_name, related_primary_column, relation_name, mapping_table_name)
  VALUES ('pits', 'fid', 'photos', 'id', 'media', 'pits_photos');
