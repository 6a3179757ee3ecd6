using Microsoft.EntityFrameworkCore.Metadata;
using ReedClinic.Data.Privacy;

namespace ReedClinic.Data.Tests.Privacy;

/// <summary>The table of what is kept covers everything that is kept: OWASP ASVS 5.0, 14.1.1 and 14.1.2.</summary>
public sealed class DataMapTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static readonly string[] Owners = ["person", "studio", "audit", "system"];

    [Theory, OnBothEngines]
    public async Task Every_property_of_every_entity_has_a_row_and_every_row_a_property(ClinicEngine engine)
    {
        var db = await databases.OpenAsync(engine);
        await using var context = db.CreateDbContext();

        Assert.Equal(
            context.Model.GetEntityTypes().SelectMany(Properties).Distinct().Order(StringComparer.Ordinal),
            DataMap.Own.Rows.Select(row => $"{row.Entity}.{row.Property}").Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_row_has_a_kind_and_every_kind_says_what_why_how_long_and_who()
    {
        var kinds = DataMap.Own.Classes.Select(kind => kind.Key).ToHashSet();

        Assert.All(DataMap.Own.Rows, row => Assert.Contains(row.Class, kinds));
        Assert.Equal(kinds.Order(), DataMap.Own.Rows.Select(row => row.Class).Distinct().Order());
        Assert.All(DataMap.Own.Rows, row => Assert.True(row.Export == "yes" || (row.Export.StartsWith("no: ", StringComparison.Ordinal) && row.Export.Length > 6), $"{row.Entity}.{row.Property}"));
        Assert.All(DataMap.Own.Classes, kind => Assert.All(new[] { kind.What, kind.Why, kind.Kept, kind.SeenBy }, Assert.NotEmpty));
        Assert.All(DataMap.Own.Classes, kind => Assert.Contains(kind.Whose, Owners));
    }

    [Fact]
    public void Nothing_that_is_the_studios_or_the_systems_is_in_a_persons_copy() =>
        Assert.All(
            DataMap.Own.Rows.Where(row => row.IsExported),
            row => Assert.Equal("person", DataMap.Own.Classes.Single(kind => kind.Key == row.Class).Whose));

    [Fact]
    public void Words_that_are_kept_as_they_were_typed_are_named_by_the_kind_they_belong_to()
    {
        var said = Assert.Single(DataMap.Own.Rows, row => (row.Entity, row.Property) == ("BenchEntry", "Said"));

        Assert.Contains("the words that were typed", DataMap.Own.Classes.Single(kind => kind.Key == said.Class).What, StringComparison.Ordinal);
        Assert.True(said.IsExported);
    }

    private static IEnumerable<string> Properties(IEntityType entity) =>
    [
        .. entity.GetDeclaredProperties().Select(property => $"{DataMap.NameOf(entity)}.{property.Name}"),
        .. entity.GetDeclaredComplexProperties().SelectMany(part => part.ComplexType.GetProperties().Select(property => $"{DataMap.NameOf(entity)}.{part.Name}.{property.Name}")),
    ];
}
