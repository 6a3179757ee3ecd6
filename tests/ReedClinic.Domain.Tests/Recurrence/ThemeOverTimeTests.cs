using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Recurrence;

namespace ReedClinic.Domain.Tests.Recurrence;

public sealed class ThemeOverTimeTests
{
    [Fact]
    public void What_goes_well_is_told_first_and_families_stand_for_what_lies_within_them()
    {
        var told = Of(Sheets.Batch(1, "+tip-corners-thick +spine-intact", "+tip-even-across +bumps"), Sheets.Batch(2, "+tip-corners-thick +spine-intact"));

        Assert.Equal(["support-kept", "tip-not-apart", "not-smooth"], told.Select(line => line.Theme.Id));
        Assert.Equal(FindingCharacter.Strength, told[0].Theme.Character);
    }

    [Fact]
    public void Where_one_fault_of_a_family_has_gone_and_another_came_each_is_told_by_itself()
    {
        const string before = "+tip-thin -tip-centre-thin", now = "-tip-thin +tip-centre-thin";
        var told = Of(Sheets.Batch(1, before, before), Sheets.Batch(2, before, before), Sheets.Batch(3, now, now));

        Assert.Equal(["tip-thin", "tip-centre-thin"], told.Select(line => line.Theme.Id));
        Assert.Equal([true, false], told.Select(line => line.IsMastered));
        Assert.Equal(2, told[1].Now.Found);
    }

    [Fact]
    public void What_nobody_looked_for_on_the_latest_reeds_is_not_called_gone()
    {
        const string before = "+tip-thin -tip-centre-thin", now = "+tip-centre-thin";
        var told = Of(Sheets.Batch(1, before, before), Sheets.Batch(2, before, before), Sheets.Batch(3, now, now)).Single(line => line.Theme.Id == "tip-overdone");

        Assert.NotEqual(TimeWord.Other, told.Word);
        Assert.Empty(told.OnlyBefore);
    }

    [Theory]
    [InlineData("+tip-thin +worn", "-tip-thin -worn", TimeWord.NotNowInPart)]
    [InlineData("+tip-thin", "-tip-thin -tip-centre-thin", TimeWord.NotNow)]
    [InlineData("-tip-thin", "+tip-thin", TimeWord.FirstSeen)]
    [InlineData("+tip-thin", "", TimeWord.NotLookedNow)]
    [InlineData("", "+tip-thin", TimeWord.FirstLook)]
    [InlineData("+tip-thin", "+tip-thin", TimeWord.Persisting)]
    public void Two_batches_are_told_of_without_claiming_a_change(string before, string now, TimeWord word) =>
        Assert.Equal(word, Of(Sheets.Batch(1, before, before), Sheets.Batch(2, now, now)).Single(line => line.Theme.Kinds.Any(kind => kind.Value == "tip-thin")).Word);

    [Fact]
    public void What_was_there_before_and_was_not_looked_for_on_every_latest_reed_is_not_called_gone()
    {
        var before = Enumerable.Range(1, 3).Select(number => Sheets.Batch(number, "+tip-thin", "+tip-thin", "+tip-thin", "+tip-thin"));
        var now = Enumerable.Range(4, 3).Select(number => Sheets.Batch(number, "-tip-centre-thin", "-tip-centre-thin", "-tip-thin", "-tip-thin"));

        Assert.Equal(TimeWord.NotNowInPart, Assert.Single(Of([.. before, .. now])).Word);
    }

    [Fact]
    public void A_row_names_what_was_found_in_it_and_nothing_else_of_its_family() =>
        Assert.Equal(
            ["tip-corners-thick", "tip-not-separate"],
            Assert.Single(Of(Sheets.Batch(1, "+tip-corners-thick"), Sheets.Batch(2, "+tip-not-separate"))).Ever.Select(kind => kind.Value));

    [Fact]
    public void Two_things_that_are_done_well_have_a_count_each()
    {
        var told = Of(Sheets.Batch(1, "+spine-intact -heart-well-kept", "+spine-intact +heart-well-kept", "-spine-intact +heart-well-kept"));

        Assert.Equal(["spine-intact", "heart-well-kept"], told.Select(line => line.Theme.Id).OrderDescending());
        Assert.Equal([2, 2], told.Select(line => line.Now.Found));
    }

    [Fact]
    public void What_is_surely_gone_is_called_gone_and_what_is_surely_new_is_called_new()
    {
        var history = Enumerable.Range(1, 6).Select(number => number <= 3
            ? Sheets.Batch(number, "+tip-thin -bumps", "+tip-thin -bumps", "+tip-thin -bumps", "+tip-thin -bumps")
            : Sheets.Batch(number, "-tip-thin +bumps", "-tip-thin +bumps", "-tip-thin +bumps", "-tip-thin +bumps")).ToArray();

        var told = Of(history);

        Assert.Equal(TimeWord.Gone, told.Single(line => line.Theme.Id == "tip-overdone").Word);
        Assert.Equal(["tip-overdone"], told.Where(line => line.IsMastered).Select(line => line.Theme.Id));
        Assert.Equal(TimeWord.New, told.Single(line => line.Theme.Id == "not-smooth").Word);
    }

    [Fact]
    public void What_nobody_looked_for_on_the_latest_reeds_is_not_called_gone_or_still_there()
    {
        var history = Enumerable.Range(1, 6).Select(number => number <= 3
            ? Sheets.Batch(number, "+tip-thin +bumps", "+tip-thin +bumps", "+tip-thin +bumps", "+tip-thin +bumps")
            : Sheets.Batch(number, "-tip-thin +bumps", "-tip-thin +bumps", "-tip-thin +bumps", "-tip-thin +bumps"));

        Assert.All(Of([.. history, Sheets.Batch(7, "+worn")]).Where(line => line.Theme.Id != "keeping"), line => Assert.Equal(TimeWord.NotLookedNow, line.Word));
    }

    [Fact]
    public void What_was_there_long_ago_is_not_called_new_when_it_comes_back()
    {
        var told = Of([.. Enumerable.Range(1, 10).Select(number => number is 1 or 2 or >= 7
            ? Sheets.Batch(number, "+bumps", "+bumps", "+bumps", "+bumps")
            : Sheets.Batch(number, "-bumps", "-bumps", "-bumps", "-bumps"))]);

        Assert.Equal(TimeWord.Growing, Assert.Single(told).Word);
    }

    [Fact]
    public void What_had_gone_and_is_back_is_told_so_and_not_called_still_there_beside_another_fault_of_its_family()
    {
        const string first = "+tip-corners-thick -tip-not-separate", before = "-tip-corners-thick +tip-not-separate";
        var told = Of(Sheets.Batch(1, first, first, first), Sheets.Batch(2, before, before, before), Sheets.Batch(3, "+tip-corners-thick +tip-not-separate"));

        Assert.Equal("Back", told.Single(line => line.Theme.Id == "tip-corners-thick").Word.ToString());
        Assert.Equal([0, 3, 1], told.Single(line => line.Theme.Id == "tip-not-separate").Batches.Select(tally => tally.Tally.Found));
    }

    [Fact]
    public void A_family_that_had_gone_as_a_whole_and_is_back_stays_one_row()
    {
        const string all = "-tip-thin -tip-centre-thin";
        Assert.Equal("Back", Assert.Single(Of(Sheets.Batch(1, "+tip-thin"), Sheets.Batch(2, all, all), Sheets.Batch(3, "+tip-thin"))).Word.ToString());
    }

    [Fact]
    public void Without_reeds_or_findings_there_is_nothing_to_tell()
    {
        Assert.Empty(Of());
        Assert.Empty(Of(Sheets.Batch(1)));
        Assert.Empty(Of(Sheets.Batch(1, "-tip-thin", "")));
    }

    [Fact]
    public void What_one_batch_has_is_told_and_thirty_batches_are_told_too()
    {
        Assert.Equal(TimeWord.FirstLook, Assert.Single(Of(Sheets.Batch(1, "+worn"))).Word);

        string[] reeds = [.. Enumerable.Range(0, 12).Select(at => at % 2 == 0 ? "+tip-thin +worn +spine-intact" : "-tip-thin -worn")];
        var told = Of([.. Enumerable.Range(1, 30).Select(number => Sheets.Batch(number, reeds))]);

        Assert.All(told, line => Assert.Equal(30, line.Batches.Count));
        Assert.All(told, line => Assert.Equal(TimeWord.Persisting, line.Word));
    }

    private static IReadOnlyList<ThemeOverTime> Of(params FindingSheet[] batches)
    {
        var history = Sheets.History(batches);
        return ThemeOverTime.Of(history, Recurrences.Of(history, StudioRates.Unknown));
    }
}
