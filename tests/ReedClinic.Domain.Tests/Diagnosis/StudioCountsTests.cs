using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Diagnosis;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Tests.Bench;

namespace ReedClinic.Domain.Tests.Diagnosis;

/// <summary>What teachers said of causes, and how it changes how often a cause is taken to be met here.</summary>
public sealed class StudioCountsTests
{
    private static readonly Cause Corners = Catalogue.Shipped.Find(new CauseId("tip-corners-thick"))!;

    [Fact]
    public void The_last_word_on_each_reed_counts_once()
    {
        var counts = StudioCounts.Of([Said(CauseAnswer.Confirmed), Said(CauseAnswer.Dismissed, CauseAnswer.Confirmed), Said(CauseAnswer.Confirmed, CauseAnswer.Dismissed), Said(CauseAnswer.Confirmed, CauseAnswer.Open)]);

        Assert.Equal("2 confirmed of 3 here", counts.Find(Corners.Id)!.Value.Words);
        Assert.Null(counts.Find(new CauseId("tip-thick")));
    }

    [Fact]
    public void What_was_taken_back_or_said_before_it_was_forgotten_does_not_count()
    {
        var writer = new Writer();
        var tail = writer.Say(Word(CauseAnswer.Confirmed));
        writer.Undo(tail);

        Assert.Empty(StudioCounts.Of([writer.Log]).All);
        Assert.Empty(StudioCounts.Of([Said(CauseAnswer.Confirmed)], DateTimeOffset.UnixEpoch.AddMinutes(1)).All);
        Assert.Single(StudioCounts.Of([Said(CauseAnswer.Confirmed)], DateTimeOffset.UnixEpoch).All);
    }

    // The mean of a beta distribution after k of n: Gelman and others, Bayesian Data Analysis, 3rd ed. (2013), section 2.4, (a + k) / (a + b + n). Here
    // the density is summed over a grid instead.
    [Theory]
    [InlineData(3, 1)]
    [InlineData(0, 4)]
    [InlineData(4, 0)]
    public void The_number_for_here_is_the_mean_of_a_beta_distribution(int confirmed, int dismissed)
    {
        var (p, worth) = (Corners.Prior.Value, (double)StudioCounts.DefaultWorth);
        var grid = Enumerable.Range(1, 199_999).Select(at => at / 200_000.0).Select(x =>
            (x, Density: Math.Exp((((p * worth) + confirmed - 1) * Math.Log(x)) + ((((1 - p) * worth) + dismissed - 1) * Math.Log(1 - x))))).ToList();

        Assert.Equal(grid.Sum(at => at.x * at.Density) / grid.Sum(at => at.Density), Counts(confirmed, dismissed).PriorOf(Corners).Value, 1e-5);
    }

    [Fact]
    public void Counts_move_the_number_within_bounds_and_it_says_where_it_is_from()
    {
        Assert.Equal(Corners.Prior.Value * StudioCounts.MostTimes, Counts(500, 0).PriorOf(Corners).Value, 1e-12);
        Assert.Equal(Corners.Prior.Value / StudioCounts.MostTimes, Counts(0, 500).PriorOf(Corners).Value, 1e-12);
        Assert.Equal(new EvidenceMark(Evidence.OnRecord, "3 confirmed of 4 here; this program’s own 0.06 counts as 40 reeds"), Counts(3, 1).PriorOf(Corners).Mark);
    }

    [Fact]
    public void The_catalogue_takes_the_numbers_and_the_shipped_one_stays_as_it_is()
    {
        var here = Counts(4, 0).LayOver(Catalogue.Shipped);

        Assert.True(here.Find(Corners.Id)!.Prior.Value > Corners.Prior.Value);
        Assert.Equal(Corners.Prior, Catalogue.Shipped.Find(Corners.Id)!.Prior);
        Assert.Same(Catalogue.Shipped, StudioCounts.None.LayOver(Catalogue.Shipped));
    }

    [Fact]
    public void A_cause_that_was_retired_or_is_not_known_is_passed_over()
    {
        var studio = Assert.IsType<Outcome<Catalogue>.Done>(Catalogue.Shipped.With(new CatalogueChange.Retire(CatalogueTable.Causes, Corners.Id.Value))).Value;
        var writer = new Writer();
        writer.Say(Writer.Value(CauseJudged.Of(new CauseId("nobody-knows-it"), CauseAnswer.Confirmed)));
        writer.Say(Word(CauseAnswer.Confirmed));
        var here = StudioCounts.Of([writer.Log]).LayOver(studio);
        var found = LikelyCauses.Of(here, [], CauseJudged.Last(writer.Log).ToDictionary(word => word.Key, word => word.Value.Answer));

        Assert.DoesNotContain(found.Causes, one => one.Cause.Id == Corners.Id);
        Assert.All(found.Causes, one => Assert.True(double.IsFinite(one.Chance)));
    }

    [Fact]
    public void A_word_on_no_cause_or_of_no_kind_is_refused()
    {
        Assert.IsType<Outcome<CauseJudged>.Refused>(CauseJudged.Of(default, CauseAnswer.Confirmed));
        Assert.IsType<Outcome<CauseJudged>.Refused>(CauseJudged.Of(new CauseId("Thick Corners"), CauseAnswer.Confirmed));
        Assert.IsType<Outcome<CauseJudged>.Refused>(CauseJudged.Of(new CauseId(new string('a', CauseJudged.LongestCause + 1)), CauseAnswer.Confirmed));
        Assert.IsType<Outcome<CauseJudged>.Refused>(CauseJudged.Of(Corners.Id, (CauseAnswer)9));
    }

    private static StudioCounts Counts(int confirmed, int dismissed) => StudioCounts.Of(
        [.. Enumerable.Repeat(CauseAnswer.Confirmed, confirmed).Concat(Enumerable.Repeat(CauseAnswer.Dismissed, dismissed)).Select(answer => Said(answer))]);

    private static BenchLog Said(params CauseAnswer[] answers)
    {
        var writer = new Writer();
        foreach (var answer in answers)
        {
            writer.Say(Word(answer));
        }

        return writer.Log;
    }

    private static CauseJudged Word(CauseAnswer answer) => Writer.Value(CauseJudged.Of(Corners.Id, answer));
}
