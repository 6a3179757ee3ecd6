using CsCheck;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Diagnosis.Habits;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Tests.Diagnosis.Habits;

/// <summary>Guesses at a habit behind what recurs. That the one leads to the other is common practice throughout.</summary>
public sealed class LikelyHabitTests
{
    [Fact]
    public void By_common_practice_a_zone_is_over_thinned_because_its_neighbour_was_left()
    {
        Assert.Equal("tip-for-the-corners", Ids(R("tip-thin", 4, 6), R("tip-corners-thick", 5, 6))[0]);
        Assert.Contains("tip-for-the-heart", Ids(R("tip-thin", 4, 6), R("heart-sides-thick", 5, 6)));
        Assert.Equal(["heart-for-the-back"], Ids(R("heart-thin", 4, 6), R("back-thick", 5, 6)));
    }

    [Fact]
    public void By_common_practice_the_order_of_zones_and_the_knifes_path_leave_their_traces()
    {
        Assert.Contains("back-before-tip", Ids(R("back-thin", 3, 5), R("tip-thick", 4, 5)));
        Assert.Equal(["short-of-the-corners"], Ids(R("tip-corners-thick", 5, 6)));
        Assert.Equal(["up-the-middle"], Ids(R("tip-even-across", 3, 5)));
        Assert.Equal(["one-hand"], Ids(R("windows-uneven", 3, 5)));
    }

    [Fact]
    public void Each_guess_is_a_perhaps_with_its_counts_its_mark_and_tests_that_would_tell_otherwise()
    {
        var habit = Assert.Single(Of(R("tip-corners-thick", 5, 6)).Habits);

        Assert.Equal("Perhaps the knife leaves the cane before it comes to the corners.", habit.Sentence);
        Assert.Equal("tip corners too thick: on 5 of the 6 reeds that were looked at for it.", habit.Evidence);
        Assert.Equal(EvidenceMark.CommonPractice, habit.Mark);
        Assert.Equal(["look-plaque", "softest-tone"], habit.Tests.Select(test => test.Id.Value));
        Assert.Contains("If they come clean", habit.CheckYourself, StringComparison.Ordinal);
    }

    [Fact]
    public void What_does_not_recur_points_to_nothing()
    {
        Assert.Empty(Ids(R("tip-corners-thick", 1, 1)));
        Assert.Empty(Ids(R("tip-corners-thick", 3, 12)));
        Assert.Empty(Ids(R("heart-thin", 4, 6))); // it takes the neighbour too
        Assert.Equal("Nothing recurs that points to one habit.", Of(R("tip-corners-thick", 1, 6)).Sentence);
    }

    [Fact]
    public void Not_looked_is_not_absent()
    {
        Assert.Equal("Nothing has been looked at yet, so there is nothing to guess from.", Of().Sentence);
        Assert.Equal("Nothing has been looked at yet, so there is nothing to guess from.", Of(R("tip-corners-thick", 0, 0)).Sentence);
        Assert.Equal(["short-of-the-corners"], Ids(R("tip-corners-thick", 3, 4), R("tip-falls-to-sides", 0, 0)));
    }

    [Fact]
    public void What_is_done_well_speaks_against_a_guess_and_many_reeds_for_it()
    {
        double Weight(params Recurs[] tallies) => Of(tallies).Habits.Select(habit => habit.Weight).FirstOrDefault();

        Assert.True(Weight(R("tip-even-across", 4, 6), R("tip-falls-to-sides", 2, 6)) < Weight(R("tip-even-across", 4, 6)));
        Assert.True(Weight(R("tip-even-across", 8, 12)) > Weight(R("tip-even-across", 2, 3)));
        Assert.Empty(Ids(R("rails-cut", 2, 5), R("rails-intact", 5, 6)));
    }

    /// <summary>Newcombe, R. G. (1998), Statistics in Medicine 17, 857–872, Table I, method 3.</summary>
    [Theory]
    [InlineData(81, 263, 0.2553)]
    [InlineData(15, 148, 0.0624)]
    [InlineData(0, 20, 0)]
    [InlineData(1, 29, 0.0061)]
    public void What_is_borne_out_at_the_least_is_wilsons_lower_limit(int found, int looked, double lower) =>
        Assert.Equal(lower, LikelyHabits.Least(R("tip-corners-thick", found, looked)), 0.00005);

    [Fact]
    public void Every_habits_findings_and_tests_are_known_and_its_sentence_blames_nobody()
    {
        foreach (var way in HabitTable.All)
        {
            Assert.All(way.Needs.SelectMany(kinds => kinds).Concat(way.Against), kind => Assert.NotNull(FindingCatalogue.Find(new FindingKindId(kind))));
            Assert.All(way.Against, kind => Assert.Contains(FindingCatalogue.Find(new FindingKindId(kind))!.Usually, new[] { Domain.Bench.FindingCharacter.Strength, Domain.Bench.FindingCharacter.Fault }));
            Assert.All(way.Tests, test => Assert.NotNull(Catalogue.Shipped.Find(new TestCardId(test))));
            Assert.True(char.IsLower(way.Perhaps[0]) && way.Perhaps.EndsWith('.'));
            Assert.DoesNotContain("you ", way.Perhaps, StringComparison.OrdinalIgnoreCase);
        }

        Assert.Equal(HabitTable.All.Count, HabitTable.All.Select(way => way.Id).Distinct().Count());
    }

    [Fact]
    public void A_test_that_the_studio_retired_is_left_out()
    {
        var studio = Assert.IsType<Outcome<Catalogue>.Done>(Catalogue.Shipped.With(new CatalogueChange.Retire(CatalogueTable.Tests, "softest-tone"))).Value;

        Assert.Equal(["look-plaque"], LikelyHabits.Of(studio, [R("tip-corners-thick", 5, 6)]).Habits[0].Tests.Select(test => test.Id.Value));
    }

    [Fact]
    public void Whatever_comes_in_at_most_three_guesses_come_out_each_a_perhaps()
    {
        var kinds = FindingCatalogue.All.Select(kind => kind.Id).Append(default).Append(new FindingKindId("sings")).ToArray();
        Gen.Select(Gen.Int[0, kinds.Length - 1], Gen.Int[-2, 20], Gen.Int[-2, 14], (kind, found, looked) => new Recurs(kinds[kind], found, looked)).Array[0, 60].Sample(
            tallies =>
            {
                var guess = LikelyHabits.Of(Catalogue.Shipped, tallies);
                Assert.InRange(guess.Habits.Count, 0, 3);
                Assert.All(guess.Habits, habit => Assert.True(double.IsFinite(habit.Weight) && habit.Sentence.StartsWith("Perhaps ", StringComparison.Ordinal)));
                Assert.False(string.IsNullOrWhiteSpace(guess.Sentence));
            },
            iter: 500);
    }

    private static Recurs R(string kind, int found, int looked) => new(new FindingKindId(kind), found, looked);

    private static HabitGuess Of(params Recurs[] tallies) => LikelyHabits.Of(Catalogue.Shipped, tallies);

    private static string[] Ids(params Recurs[] tallies) => [.. Of(tallies).Habits.Select(habit => habit.Id)];
}
