using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Tests.Catalogues;

public sealed class ShippedCatalogueTests
{
    private static readonly Catalogue Shipped = Catalogue.Shipped;

    [Fact]
    public void The_files_hold_together_with_nothing_unresolved_unused_or_twice() => Assert.Empty(CatalogueReader.Read(ShippedFiles.Texts()).Problems);

    [Fact]
    public void There_are_as_many_entries_as_the_trades_tables_have()
    {
        // 28 tests, with the plaque, five of the bench log's own and both ways up; 75 faults, one more and one in two; 44 adjustments and the whole tip.
        Assert.Equal(34, Shipped.Tests.Count);
        Assert.Equal(77, Shipped.Causes.Count);
        Assert.Equal(45, Shipped.Adjustments.Count);
    }

    [Fact]
    public void Every_published_statement_names_its_source_and_no_other_does() =>
        Assert.All(Marks(), mark => Assert.Equal(mark.Evidence == Evidence.Published, !string.IsNullOrWhiteSpace(mark.Source)));

    [Fact]
    public void A_source_is_named_in_the_same_words_as_on_findings_and_adjustments()
    {
        var theirs = FindingCatalogue.All.Select(kind => kind.Mark.Source).Concat(AdjustmentCatalogue.All.Select(kind => kind.Mark.Source)).OfType<string>().ToHashSet();
        var ours = Marks().Select(mark => mark.Source).OfType<string>().SelectMany(text => text.Split("; ")).ToHashSet();

        Assert.True(theirs.Intersect(ours).Count() >= 15, string.Join('\n', theirs.Except(ours)));
    }

    [Fact]
    public void Every_prior_strength_and_unasked_chance_is_marked_as_our_own_default()
    {
        Assert.All(Shipped.Causes, cause => Assert.Equal(EvidenceMark.OwnDefault, cause.Prior.Mark));
        Assert.All(Shipped.Links, link => Assert.Equal(EvidenceMark.OwnDefault, link.Strength.Mark));
        Assert.All(Shipped.Signs, sign => Assert.Equal(EvidenceMark.OwnDefault, sign.Unasked.Mark));
        Assert.All(Shipped.Links, link => Assert.Equal(Shipped.Defaults.StrengthOf(link.Belonging), link.Strength));
    }

    [Fact]
    public void What_the_bench_log_knows_is_called_the_same_here()
    {
        Assert.All(AdjustmentCatalogue.All, kind => Assert.Equal(
            (kind.Name, kind.Zone, kind.Reversible, kind.Caution, kind.Mark),
            (Shipped.Find(kind.Id)!.Name, Shipped.Find(kind.Id)!.Zone, Shipped.Find(kind.Id)!.Undo, Shipped.Find(kind.Id)!.Caution, Shipped.Find(kind.Id)!.Mark)));
        Assert.All(Shipped.Causes.Where(cause => cause.Finding is not null && cause.Id.Value == cause.Finding.Value.Value), cause =>
            Assert.Equal(FindingCatalogue.Find(cause.Finding!.Value)!.ForStudent, cause.Line));
    }

    [Fact]
    public void Every_cause_shows_itself_in_five_signs_or_more_and_no_two_in_the_same()
    {
        Assert.All(Shipped.Causes, cause => Assert.True(Shipped.LinksOf(cause.Id).Count() >= 5, cause.Name));
        Assert.Equal(Shipped.Causes.Count, Shipped.Causes
            .Select(cause => string.Join(' ', Shipped.LinksOf(cause.Id).Select(link => $"{link.Sign.Value} {link.Belonging}").Order(StringComparer.Ordinal))).Distinct().Count());
    }

    [Fact]
    public void Words_for_people_use_the_printers_apostrophe() => Assert.All(ShippedFiles.Texts().Values, text => Assert.DoesNotContain('\'', text));

    private static IEnumerable<EvidenceMark> Marks() =>
    [
        .. Shipped.Tests.Select(one => one.Mark), .. Shipped.Signs.Select(one => one.Unasked.Mark),
        .. Shipped.Causes.SelectMany(one => new[] { one.Mark, one.Prior.Mark, one.StepsMark }), .. Shipped.Links.SelectMany(one => new[] { one.Mark, one.Strength.Mark }),
        .. Shipped.Adjustments.SelectMany(one => one.Effects.Values.Select(effect => effect.Mark).Concat([one.Mark, one.Risk.Mark, one.ByChoice.Mark])),
    ];
}
