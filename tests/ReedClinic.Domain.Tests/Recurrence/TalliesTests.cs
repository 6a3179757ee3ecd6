using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Diagnosis.Habits;
using ReedClinic.Domain.Recurrence;
using static ReedClinic.Domain.Tests.Recurrence.Sheets;

namespace ReedClinic.Domain.Tests.Recurrence;

/// <summary>What a habit is guessed from: all reeds of a student count, and what no reed of this batch has points to nothing. Our own rule.</summary>
public sealed class TalliesTests
{
    [Theory]
    [InlineData("+tip-not-separate", "+tip-not-separate", "tip not separate from the heart: on 2 of the 3 reeds of this batch that were looked at for it, and on 3 of the 3 before.")]
    [InlineData("+tip-not-separate", "+back-thin", "tip not separate from the heart: on 1 of the 2 reeds of this batch that were looked at for it, and on 3 of the 3 before.")]
    public void What_is_on_these_reeds_and_was_on_earlier_ones_is_told_apart(string first, string second, string evidence)
    {
        var history = History(Batch(1, "+tip-not-separate", "+tip-not-separate", "+tip-not-separate"), Batch(2, first, second, "-tip-not-separate"));

        Assert.Contains(Guessed(history).Habits, habit => habit.Evidence == evidence);
    }

    [Theory]
    [InlineData("+back-thin")]
    [InlineData("-tip-not-separate")]
    [InlineData("")]
    public void What_was_on_earlier_reeds_alone_points_to_no_habit_behind_these(string now)
    {
        var history = History(Batch(1, "+tip-not-separate", "+tip-not-separate", "+tip-not-separate"), Batch(2, now, now, now));

        Assert.DoesNotContain(Guessed(history).Habits, habit => habit.Id == "over-blended");
    }

    [Fact]
    public void One_reed_is_told_of_in_the_singular_and_a_first_batch_has_nothing_before_it()
    {
        var history = History(Batch(1, "+tip-not-separate", "-tip-not-separate"), Batch(2, "+tip-not-separate"));
        Assert.Contains(Guessed(history).Habits, habit => habit.Evidence == "tip not separate from the heart: on the one reed of this batch that was looked at for it, and on 1 of the 2 before.");

        var first = History(Batch(1, "+tip-not-separate", "+tip-not-separate"));
        Assert.Contains(Guessed(first).Habits, habit => habit.Evidence == "tip not separate from the heart: on 2 of the 2 reeds of this batch that were looked at for it.");
    }

    private static HabitGuess Guessed(StudentHistory history) => LikelyHabits.Of(Catalogue.Shipped, history.Tallies());
}
