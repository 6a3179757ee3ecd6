using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Faults;

public sealed partial class CatalogueTests
{
    [Fact]
    public void Every_kind_has_a_lasting_name_of_its_own_and_plain_words()
    {
        Assert.Equal(FindingCatalogue.All.Count, FindingCatalogue.All.Select(kind => kind.Id).Distinct().Count());
        Assert.Equal(FindingCatalogue.All.Count, FindingCatalogue.All.Select(kind => kind.Name).Distinct().Count());
        Assert.Equal(AdjustmentCatalogue.All.Count, AdjustmentCatalogue.All.Select(kind => kind.Id).Distinct().Count());
        Assert.Equal(AdjustmentCatalogue.All.Count, AdjustmentCatalogue.All.Select(kind => kind.Name).Distinct().Count());
        Assert.All(FindingCatalogue.All, kind => Assert.Matches(LastingName(), kind.Id.Value));
        Assert.All(AdjustmentCatalogue.All, kind => Assert.Matches(LastingName(), kind.Id.Value));
        Assert.All(FindingCatalogue.All, kind => AssertSentence(kind.ForStudent));
        Assert.All(AdjustmentCatalogue.All, kind => AssertSentence(kind.Caution));
    }

    [Fact]
    public void Only_a_published_text_is_named_and_every_published_mark_names_one() =>
        Assert.All(
            FindingCatalogue.All.Select(kind => kind.Mark).Concat(AdjustmentCatalogue.All.Select(kind => kind.Mark)),
            mark => Assert.Equal(mark.Evidence == Evidence.Published, !string.IsNullOrWhiteSpace(mark.Source)));

    [Fact]
    public void Strengths_tastes_and_faults_are_all_there_among_them_what_bench_practice_adds()
    {
        foreach (var character in Enum.GetValues<FindingCharacter>())
        {
            Assert.Contains(FindingCatalogue.All, kind => kind.Usually == character);
        }

        Assert.Equal(Zone.TipCentre, FindingCatalogue.Find(new("tip-even-across"))!.Zone);
        Assert.Equal(FindingCharacter.Strength, FindingCatalogue.Find(new("spine-intact"))!.Usually);

        // Two different faults (common practice): slipped too far the right way, and slipped against the winding.
        Assert.NotNull(FindingCatalogue.Find(new("slipped-too-far")));
        Assert.NotNull(FindingCatalogue.Find(new("slipped-against-winding")));
    }

    [Fact]
    public void Whatever_takes_cane_away_can_not_be_undone()
    {
        string[] knife = ["thin-corners", "blend", "dust-heart", "open-windows", "clip-hair", "clip", "even-up"];

        Assert.All(knife, id => Assert.Equal(Reversible.No, AdjustmentCatalogue.Find(new(id))!.Reversible));
        Assert.Equal(Reversible.Yes, AdjustmentCatalogue.Find(new("soak"))!.Reversible);
        Assert.Equal(Reversible.Partly, AdjustmentCatalogue.Find(new("open-squeeze"))!.Reversible);
    }

    [Fact]
    public void What_has_no_kind_is_called_something_else()
    {
        Assert.Null(FindingCatalogue.Find(FindingKindId.SomethingElse));
        Assert.Equal("something else", FindingCatalogue.NameOf(FindingKindId.SomethingElse));
        Assert.Equal("something else", AdjustmentCatalogue.NameOf(default));
        Assert.Equal("clip", AdjustmentCatalogue.NameOf(new("clip")));
    }

    private static void AssertSentence(string text)
    {
        Assert.True(char.IsUpper(text[0]) && text.EndsWith('.'), text);
        Assert.True(text.Length <= 160, text);
    }

    [GeneratedRegex("^[a-z]+(-[a-z]+)*$")]
    private static partial Regex LastingName();
}
