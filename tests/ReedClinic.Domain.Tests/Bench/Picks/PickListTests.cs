using CsCheck;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Picks;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench.Picks;

public sealed class PickListTests
{
    private static readonly DateTimeOffset Now = new(2026, 3, 9, 10, 0, 0, TimeSpan.Zero);
    private static readonly WorkPick Rails = Pick("thin-rails");
    private static readonly WorkPick Blend = Pick("blend", strokes: 4);
    private static readonly WorkPick Clip2 = Pick("clip", micrometres: 200);
    private static readonly WorkPick Clip3 = Pick("clip", micrometres: 300);

    [Fact]
    public void Whoever_has_no_log_yet_gets_the_usual_list_without_what_is_never_hurried()
    {
        var list = PickList.Of([], Now);

        Assert.Equal(PickList.Start.Adjustments, list.Adjustments);
        Assert.Equal(PickList.Start.Tests, list.Tests);
        Assert.Equal((9, 9), (list.Adjustments.Count, list.Tests.Count));
        Assert.Equal((9, 9), (list.Adjustments.Distinct().Count(), list.Tests.Distinct().Count()));
        Assert.DoesNotContain(list.Adjustments, pick => pick.Place.Zone is Zone.HeartCentre or Zone.Spine or Zone.Rails or Zone.TipCentre or Zone.SideEdges);
        Assert.All(list.Adjustments, pick => Assert.NotNull(AdjustmentCatalogue.Find(pick.Kind)));
    }

    [Fact]
    public void What_this_teacher_does_most_comes_first_with_its_amount_and_the_usual_fills_up_without_its_kind()
    {
        var list = PickList.Of([.. Times(Clip2, 5), .. Times(Clip3, 3), .. Times(Rails, 2), .. Times(Blend, 1), .. Times(TestKind.Seal, 2)], Now);

        Assert.Equal([Clip2, Clip3, Rails], list.Adjustments.Take(3));
        Assert.Equal(0.2m, list.Adjustments[0].Amount.Millimetres);
        Assert.Equal(9, list.Adjustments.Count);
        Assert.Equal(PickList.Start.Adjustments.Take(6), list.Adjustments.Skip(3));
        Assert.Equal([TestKind.Seal, TestKind.Crow, TestKind.Effort], list.Tests.Take(3));
    }

    [Fact]
    public void What_the_studio_added_gets_a_key_when_it_is_this_teachers_habit_and_comes_behind_what_is_done_as_often()
    {
        var own = new WorkPick(new AdjustmentKindId("own-gentle-abc"), new Place(Zone.Thread));
        var said = Assert.IsType<Outcome<Adjustment>.Done>(Adjustment.Of(own.Kind, own.Place, words: "tease the thread up")).Value;

        Assert.Equal(own, Habit.Of(said)!.Work);
        Assert.Equal([own, Blend], PickList.Of([.. Times(own, 4), .. Times(Blend, 2)], Now).Adjustments.Take(2));
        Assert.Equal([Blend, own], PickList.Of([.. Times(own, 4), .. Times(Blend, 4)], Now).Adjustments.Take(2));
        Assert.DoesNotContain(own, PickList.Of([.. Times(own, 1)], Now).Adjustments);
    }

    [Fact]
    public void What_was_done_a_half_life_ago_counts_for_half()
    {
        var then = Now - PickList.HalfLife;

        Assert.Equal([Blend, Clip2], PickList.Of([.. Times(Clip2, 5, then), .. Times(Blend, 3)], Now).Adjustments.Take(2));
        Assert.Equal([Clip2, Blend], PickList.Of([.. Times(Clip2, 7, then), .. Times(Blend, 3)], Now).Adjustments.Take(2));
    }

    [Fact]
    public void A_clock_that_was_ahead_makes_nothing_count_for_more_than_once() =>
        Assert.Equal([Blend, Clip2], PickList.Of([.. Times(Clip2, 2, Now + (10 * PickList.HalfLife)), .. Times(Blend, 3)], Now).Adjustments.Take(2));

    [Fact]
    public void The_same_counts_keep_the_order_they_had_and_without_one_the_catalogue_decides()
    {
        Habit[] even = [.. Times(Clip2, 4), .. Times(Blend, 4), .. Times(Rails, 4)];

        var first = PickList.Of(even, Now);
        Assert.Equal([Blend, Rails, Clip2], first.Adjustments.Take(3));

        var before = first with { Adjustments = [Clip2, Rails, Blend] };
        Assert.Equal([Clip2, Rails, Blend], PickList.Of(even, Now, before).Adjustments.Take(3));
    }

    [Fact]
    public void One_more_time_among_many_does_not_make_the_list_jump_and_many_more_do()
    {
        var before = PickList.Of([.. Times(Clip2, 20), .. Times(Blend, 20)], Now);
        Assert.Equal([Blend, Clip2], before.Adjustments.Take(2));

        Assert.Equal([Blend, Clip2], PickList.Of([.. Times(Clip2, 21), .. Times(Blend, 20)], Now, before).Adjustments.Take(2));
        Assert.Equal([Clip2, Blend], PickList.Of([.. Times(Clip2, 30), .. Times(Blend, 20)], Now, before).Adjustments.Take(2));
    }

    [Fact]
    public void A_number_means_the_same_all_through_a_sitting_and_a_new_habit_takes_the_number_of_what_fell_out()
    {
        var lastWeek = Now.AddDays(-7);
        Habit[] known = [.. Times(Clip2, 6, lastWeek), .. Times(Blend, 4, lastWeek)];
        var satDown = PickList.AtTheBench(known, Now.AddHours(-5));
        Assert.Equal([Clip2, Blend], satDown.Adjustments.Take(2));

        // Five hours of work with never four hours’ pause: rails, blends and clips of another size at every second hour.
        Habit[] since = [.. new[] { -5, -3, -1 }.SelectMany(hours => Times(Blend, 9, Now.AddHours(hours)).Concat(Times(Rails, 2, Now.AddHours(hours))))];
        var list = PickList.AtTheBench([.. since, .. known], Now);

        Assert.Equal(satDown.Adjustments.Take(8), list.Adjustments.Take(8));
        Assert.Equal(Rails, list.Adjustments[8]);
        Assert.Equal(satDown.Tests, list.Tests);

        // After a pause it has settled.
        Assert.Equal([Blend, Rails, Clip2], PickList.AtTheBench([.. since, .. known], Now + PickList.Pause).Adjustments.Take(3));
    }

    [Fact]
    public void Only_tests_and_adjustments_with_a_name_are_habits()
    {
        var writer = new Writer();
        writer.Say(Writer.Test(TestKind.Crow, 0));
        writer.Say(Writer.Work());
        writer.Say(Writer.Note("a remark"));
        writer.Say(Writer.Value(Adjustment.Of(AdjustmentKindId.SomethingElse, new Place(Zone.Windows), words: "a twist")));

        var habits = writer.Entries.Select(Habit.Of).OfType<Habit>().ToList();

        Assert.Equal([(null, TestKind.Crow), (new AdjustmentKindId("thin-corners"), null)], habits.Select(habit => (habit.Work?.Kind, habit.Test)));
        Assert.Equal(DateTimeOffset.UnixEpoch.AddMinutes(1), habits[0].At);
    }

    [Fact]
    public void A_list_is_always_nine_of_each_without_repeats_whatever_was_done_and_in_whatever_order_it_is_read() =>
        Gen.Select(
            Gen.Select(Gen.Int[0, AdjustmentCatalogue.All.Count - 1], Gen.Int[0, 3], Gen.Int[0, 400], Gen.Enum<TestKind>()).List[0, 60], Gen.Int)
        .Sample(
            (done, seed) =>
            {
                var habits = done.SelectMany(one => new[]
                {
                    new Habit(Pick(AdjustmentCatalogue.All[one.Item1].Id.Value, one.Item2 == 0 ? null : one.Item2), null, Now.AddDays(-one.Item3)),
                    new Habit(null, one.Item4, Now.AddDays(-one.Item3)),
                }).ToArray();
                var list = PickList.Of(habits, Now);
                new Random(seed).Shuffle(habits);
                var again = PickList.Of(habits, Now, list);

                Assert.Equal((9, 9), (list.Adjustments.Distinct().Count(), list.Tests.Distinct().Count()));
                Assert.Equal((9, 9), (list.Adjustments.Count, list.Tests.Count));
                Assert.Equal(list.Adjustments, again.Adjustments);
                Assert.Equal(list.Tests, again.Tests);
            },
            iter: 1000);

    private static WorkPick Pick(string kind, int? strokes = null, int? micrometres = null) =>
        new(new AdjustmentKindId(kind), new Place(AdjustmentCatalogue.Find(new AdjustmentKindId(kind))!.Zone), strokes, micrometres);

    private static IEnumerable<Habit> Times(WorkPick pick, int times, DateTimeOffset? at = null) =>
        Enumerable.Repeat(new Habit(pick, null, at ?? Now), times);

    private static IEnumerable<Habit> Times(TestKind test, int times) => Enumerable.Repeat(new Habit(null, test, Now), times);
}
