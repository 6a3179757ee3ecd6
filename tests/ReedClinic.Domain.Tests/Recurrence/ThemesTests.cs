using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Recurrence;

namespace ReedClinic.Domain.Tests.Recurrence;

public sealed class ThemesTests
{
    [Fact]
    public void Every_fault_and_every_strength_is_a_theme_and_each_family_holds_only_its_own_character()
    {
        Assert.All(FindingCatalogue.All.Where(kind => kind.Usually != FindingCharacter.Taste), kind => Assert.False(Themes.Find(kind.Id.Value)!.IsFamily));
        Assert.All(Themes.All, theme => Assert.All(theme.Kinds, kind => Assert.Equal(theme.Character, FindingCatalogue.Find(kind)!.Usually)));
        Assert.Equal(Themes.All.Count, Themes.All.Select(theme => theme.Id).Distinct().Count());
    }

    [Fact]
    public void What_belongs_to_a_narrower_family_belongs_to_the_wider_one_and_to_no_other()
    {
        foreach (var theme in Themes.All.Where(theme => theme.Wider is not null))
        {
            Assert.True(theme.IsWithin(Themes.Find(theme.Wider!)!), theme.Id);
        }

        foreach (var kind in FindingCatalogue.All)
        {
            var around = Themes.All.Where(theme => theme.Kinds.Contains(kind.Id)).OrderBy(theme => theme.Kinds.Count).ToList();
            Assert.All(around.Zip(around.Skip(1)), pair => Assert.True(pair.First.IsWithin(pair.Second), kind.Id.Value));
        }
    }

    [Fact]
    public void Thick_corners_are_sides_that_are_not_thinner_and_those_a_tip_that_is_not_set_off()
    {
        var corners = Themes.Find("tip-corners-thick")!;

        Assert.Equal("tip-sides-not-thinner", corners.Wider);
        Assert.Equal("tip-not-apart", Themes.Find(corners.Wider!)!.Wider);
        Assert.Contains(corners.Kinds[0], Themes.Find("tip-not-apart")!.Kinds);
    }

    [Fact]
    public void A_reed_counts_for_a_family_when_anything_of_it_was_looked_for_and_not_looked_is_missing()
    {
        var sheet = Sheets.Batch(1, "+tip-corners-thick", "-tip-corners-thick", "-tip-corners-thick -tip-even-across", "?tip-even-across", "-tip-thin", "");

        var tally = Themes.Find("tip-sides-not-thinner")!.Count(sheet);

        Assert.Equal(new Tally(2, 4, 6, Suspected: 1), tally.Tally);
        Assert.Equal(1, tally.InPart);
        Assert.Equal(new BatchCount(2, 4), tally.Batch);
    }

    [Fact]
    public void What_is_a_matter_of_taste_makes_no_fault_of_it()
    {
        Assert.Null(Themes.Find("brighter-than-liked"));
        Assert.DoesNotContain(Themes.Faults, theme => theme.Kinds.Contains(new FindingKindId("more-open-than-liked")));
    }
}
