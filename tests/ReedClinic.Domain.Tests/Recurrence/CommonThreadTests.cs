using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Recurrence;
using ReedClinic.Domain.Reeds;
using ReedClinic.Domain.Tests.Bench;

namespace ReedClinic.Domain.Tests.Recurrence;

public sealed class CommonThreadTests
{
    [Theory]
    [InlineData("The knife is held too flat.", "Perhaps the knife is held too flat.")]
    [InlineData("perhaps the knife is dull", "Perhaps the knife is dull.")]
    [InlineData("Scraping straight up the middle", "Perhaps it comes from scraping straight up the middle.")]
    [InlineData("too little light on the bench.", "Perhaps it comes from too little light on the bench.")]
    [InlineData("Maybe, I think, the left hand turns", "Perhaps I think, the left hand turns.")]
    [InlineData("Is the plaque too thick?", "Perhaps is the plaque too thick?")]
    public void A_habit_is_always_worded_as_perhaps(string typed, string said) =>
        Assert.Equal(said, Chosen(new ThreadChoice(HabitWords: typed)).HabitSentence);

    [Fact]
    public void A_habit_is_optional() => Assert.Null(Chosen(new ThreadChoice(HabitWords: " ")).HabitSentence);

    [Fact]
    public void A_choice_that_is_not_on_the_list_or_too_long_is_refused_beside_its_field()
    {
        var problems = CommonThread.Check(new ThreadChoice(
            new FindingKindId("no-such-thing"), new string('a', CommonThread.LongestText + 1), HabitWords: "bell\a"));

        Assert.Equal(["LessonKind", "LessonWords", "HabitWords"], problems.Select(problem => problem.Field));
        Assert.Throws<ArgumentException>(() => Chosen(new ThreadChoice(new FindingKindId("no-such-thing"))));
    }

    private static CommonThread Chosen(ThreadChoice choice)
    {
        var thread = CommonThread.For(new BatchId(Writer.Number(50, 1)));
        thread.Choose(choice, Writer.Ada, DateTimeOffset.UnixEpoch);
        return thread;
    }
}
