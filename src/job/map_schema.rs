//! Maps in the schema.

use schemars::JsonSchema;

/// Says in the schema of a map what its keys may be.
pub(super) fn named_by<T: JsonSchema>(schema: &mut schemars::Schema) {
    let mut names = schemars::SchemaGenerator::default().into_root_schema_for::<T>();
    names.remove("$schema");
    schema.insert("propertyNames".to_owned(), names.to_value());
}
