using CsCheck;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Diagnosis;
using ReedClinic.Domain.Diagnosis.Settling;
using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Tests.Diagnosis.Settling;

/// <summary>Does it need work, or breaking in? Each direction is held against the text or the practice it comes from; the sizes are this program’s own.</summary>
public sealed class SettlingTests
{
    /// <summary>Colwell, Hewitt &amp; Fonder, The Teaching of Instrumental Music, 5th ed., oboe chapter: a new reed’s opening narrows with playing; wait before adjusting a merely hard one.</summary>
    [Fact]
    public void By_the_teaching_handbook_a_new_reed_that_is_merely_hard_is_breaking_in()
    {
        var answer = Answer(new SettlingFacts { MinutesPlayed = 25, WetDryCycles = 2, Seen = Seen("feels-hard", "opening-wide") });

        Assert.Equal(SettlingState.StillSettling, answer.Chances[0].State);
        Assert.True(answer.IsTold);
        Assert.StartsWith("Perhaps it is still breaking in (", answer.Sentence, StringComparison.Ordinal);
        Assert.All(answer.Clues.Where(clue => clue.Words.Contains("new reed", StringComparison.Ordinal)), clue => Assert.Equal("Colwell, Hewitt & Fonder, The Teaching of Instrumental Music, 5th ed., oboe chapter", clue.Mark.Source));
    }

    /// <summary>woodwind.org forum, message 21548: gouged cane measured 0.01 to 0.04 mm thicker the next day.</summary>
    [Fact]
    public void By_a_players_micrometer_a_reed_that_is_hard_the_next_day_speaks_for_breaking_in() =>
        Assert.True(Chance(Seen("hard-next-day"), SettlingState.StillSettling) > Chance([], SettlingState.StillSettling) * 1.5);

    /// <summary>Akahoshi &amp; Obataya, on wet–dry cycling of Arundo donax: each cycle changes the cane for good.</summary>
    [Fact]
    public void By_akahoshi_and_obataya_the_first_wettings_change_most()
    {
        double At(int cycles) => Answer(new SettlingFacts { WetDryCycles = cycles }).Chances.Single(one => one.State == SettlingState.StillSettling).Chance;

        Assert.True(At(2) > At(8));
        Assert.True(At(8) > At(40));
    }

    /// <summary>Ten to fifteen hours (an oboe page on reed life), twenty to twenty-five for a player who doesn’t adjust (a maker’s newsletters).</summary>
    [Fact]
    public void By_what_is_told_of_reed_lives_a_reed_beyond_twenty_hours_is_perhaps_tired()
    {
        var answer = Answer(new SettlingFacts { MinutesPlayed = 26 * 60, WetDryCycles = 40, Seen = Seen("worn", "sounds-dead") });

        Assert.Equal(SettlingState.Tired, answer.Chances[0].State);
        Assert.StartsWith("Perhaps it is tired (", answer.Sentence, StringComparison.Ordinal);
    }

    /// <summary>Common practice.</summary>
    [Fact]
    public void By_common_practice_a_fault_in_the_cane_is_not_mended_by_time()
    {
        var answer = Answer(new SettlingFacts { MinutesPlayed = 8 * 60, GettingBetter = false, Seen = Seen("tip-corners-thick", "starts-fuzzy") });

        Assert.Equal(SettlingState.NeedsWork, answer.Chances[0].State);
        Assert.True(answer.IsTold);
    }

    /// <summary>Common practice.</summary>
    [Fact]
    public void By_common_practice_a_dry_reed_is_wetted_before_anything_is_said_of_it() =>
        Assert.StartsWith("Perhaps it is only dry", Answer(new SettlingFacts { MinutesPlayed = 10, Seen = Seen("crow-silent") }).Sentence, StringComparison.Ordinal);

    [Fact]
    public void What_can_not_be_told_is_said_with_what_would_tell()
    {
        var nothing = Answer(new SettlingFacts());
        Assert.False(nothing.IsTold);
        Assert.Contains("can’t be told", nothing.Sentence, StringComparison.Ordinal);
        Assert.Equal(4, nothing.WouldTell.Count);

        var torn = Answer(new SettlingFacts { MinutesPlayed = 25 });
        Assert.False(torn.IsTold);
        Assert.StartsWith("This can’t be told yet", torn.Sentence, StringComparison.Ordinal);
        Assert.DoesNotContain("how long it has been played", torn.WouldTell);
    }

    [Fact]
    public void A_chance_lies_between_what_it_is_with_each_clue_left_out_and_with_lighter_and_heavier_weights()
    {
        var answer = Answer(new SettlingFacts { MinutesPlayed = 25, Seen = Seen("feels-hard") });
        var top = answer.Chances[0];
        var without = Answer(new SettlingFacts { Seen = Seen("feels-hard") }).Chances.Single(one => one.State == top.State).Chance;

        Assert.InRange(without, top.Low, top.High);
        Assert.True(top.High - top.Low > 0.05);
        Assert.Contains("default", SettlingAnswer.Footing, StringComparison.Ordinal);
        Assert.Equal(Evidence.OwnDefault, Clue.WeightMark.Evidence);
    }

    [Fact]
    public void Whatever_comes_in_three_chances_come_out_that_add_up_to_one_and_the_answer_is_a_perhaps()
    {
        var signs = Catalogue.Shipped.Signs.Select(sign => sign.Id).Append(default).ToArray();
        var seen = Gen.Select(Gen.Int[0, signs.Length - 1], Gen.Bool, (sign, there) => new Sighting(signs[sign], there)).Array[0, 30];
        Gen.Select(Gen.Int[-10, 100_000], Gen.Int[-3, 900], Gen.Bool, seen).Sample(
            (minutes, cycles, better, all) =>
            {
                var answer = Answer(new SettlingFacts { MinutesPlayed = minutes, WetDryCycles = cycles, GettingBetter = better, Seen = all });
                Assert.Equal(1, answer.Chances.Sum(one => one.Chance), 1e-9);
                Assert.All(answer.Chances, one => Assert.True(one.Low <= one.Chance && one.Chance <= one.High && one.Low >= 0 && one.High <= 1));
                Assert.Matches("[Pp]erhaps|can’t be told", answer.Sentence);
            },
            iter: 500);
    }

    private static SettlingAnswer Answer(SettlingFacts facts) => SettlingAnswers.For(facts);

    private static double Chance(IReadOnlyList<Sighting> seen, SettlingState state) =>
        Answer(new SettlingFacts { Seen = seen }).Chances.Single(one => one.State == state).Chance;

    private static Sighting[] Seen(params string[] signs) => [.. signs.Select(sign => new Sighting(new SignId(sign), true))];
}
