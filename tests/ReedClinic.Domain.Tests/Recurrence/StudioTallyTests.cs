using ReedClinic.Domain.Recurrence;

namespace ReedClinic.Domain.Tests.Recurrence;

public sealed class StudioTallyTests
{
    private static readonly string[][] Reeds =
    [
        ["+tip-thin", "+tip-thin", "-tip-thin"],
        ["-tip-thin", "-tip-thin"],
        ["+tip-thin", "-tip-thin", "-tip-thin", "-tip-thin"],
        ["-tip-thin", "+tip-thin"],
        ["-tip-thin", "-tip-thin"],
        ["+tip-thin", "+tip-thin", "+tip-thin"],
    ];

    [Fact]
    public void The_rate_for_a_student_is_that_of_the_others_as_if_they_had_never_been_counted()
    {
        for (var left = 0; left < Reeds.Length; left++)
        {
            var own = StudentCount.Of(Students[left].Counts(Themes.Find("tip-thin")!));
            var others = Students.Where((_, at) => at != left).Select(student => student.Counts(Themes.Find("tip-thin")!)).ToList();

            // How alike reeds are is learned from everybody: it says nothing of anybody’s rate.
            var direct = StudioRates.Of(new Dictionary<string, List<IReadOnlyList<BatchCount>>> { ["tip-thin"] = others }, All.Likeness());
            var rolled = All.Rates().Single(rate => rate.Theme == "tip-thin" && rate.Without == own).Rate;

            Assert.Equal(direct.Rates["tip-thin"].Mean, rolled.Mean, 9);
            Assert.Equal(direct.Rates["tip-thin"].Students, rolled.Students);
        }
    }

    [Fact]
    public void What_the_studio_added_has_a_rate_of_its_own()
    {
        var tally = new StudioTally();
        for (var student = 1; student <= 4; student++)
        {
            var said = (student == 1 ? "+" : "-") + "own-fault-abc";
            tally.Add(Sheets.History(Sheets.Batch(student, said, said)));
        }

        Assert.Equal(4, tally.Rates().Single(rate => rate.Theme == "own-fault-abc" && rate.Without == default).Rate.Students);
        Assert.Equal(3, tally.Rates().Single(rate => rate.Theme == "own-fault-abc" && rate.Without == new StudentCount(2, 2, 4)).Rate.Students);
    }

    [Fact]
    public void The_rate_for_somebody_who_was_not_counted_is_that_of_all()
    {
        var direct = StudioRates.Of(Students);

        var rolled = All.Rates().Single(rate => rate.Theme == "tip-thin" && rate.Without == default).Rate;

        Assert.Equal(direct.Rates["tip-thin"].Mean, rolled.Mean, 9);
        Assert.Equal(6, rolled.Students);
        Assert.Equal(direct.Likeness, All.Likeness());
    }

    [Fact]
    public void With_fewer_than_three_others_there_is_nothing_to_compare_with()
    {
        Assert.Empty(Tally(Students[..2]).Rates());
        Assert.Empty(Tally([]).Rates());
        Assert.Equal(default, Assert.Single(Tally(Students[..3]).Rates(), rate => rate.Theme == "tip-thin").Without);
    }

    [Fact]
    public void With_more_students_than_the_limit_there_is_one_rate_for_all()
    {
        List<StudentHistory> many = [.. Enumerable.Range(0, StudioTally.MostTakenOut + 1).Select(at => Student(at, Reeds[at % Reeds.Length]))];

        Assert.Single(Tally(many).Rates(), rate => rate.Theme == "tip-thin");
        Assert.True(Tally(many[1..]).Rates().Count(rate => rate.Theme == "tip-thin") > 1);
    }

    private static List<StudentHistory> Students => [.. Reeds.Select((reeds, at) => Student(at, reeds))];

    private static StudioTally All => Tally(Students);

    private static StudentHistory Student(int at, string[] reeds) =>
        Sheets.History(Sheets.Batch(at * 2, reeds), Sheets.Batch((at * 2) + 1, reeds[..1]));

    private static StudioTally Tally(IEnumerable<StudentHistory> students)
    {
        var tally = new StudioTally();
        foreach (var student in students)
        {
            tally.Add(student);
        }

        return tally;
    }
}
