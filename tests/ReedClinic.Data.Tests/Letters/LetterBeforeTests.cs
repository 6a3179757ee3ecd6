using ReedClinic.Data.Bench;
using ReedClinic.Data.Recurrence;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Recurrence;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Letters;

/// <summary>A letter is composed with what the one before it taught.</summary>
public sealed class LetterBeforeTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task The_letter_that_was_sent_before_these_reeds_is_remembered(ClinicEngine engine)
    {
        var db = await databases.OpenAsync(engine);
        var first = await LetterScene.OfAsync(db);
        Assert.Null((await first.ReadAsync()).Before);
        await first.SentAsync();
        var second = await SecondAsync(first);

        var letter = await first.Book.ReadAsync(Teacher, second.Code, Ct);

        Assert.Equal(first.Code, letter!.Before!.Batch.Code);
        var good = letter.Draft.Blocks.Single(block => block.Key == "done-well").Paragraphs[0].Sentences;
        var known = letter.Before.Reeds.SelectMany(row => row.Log.Facts).Select(fact => fact.Root).ToHashSet();
        Assert.Equal(2, good.Single(sentence => sentence.From.Any(known.Contains)).From.Count(known.Contains));
    }

    [Theory, OnBothEngines]
    public async Task A_letter_that_was_not_sent_or_only_after_the_reeds_had_come_taught_nothing(ClinicEngine engine)
    {
        var db = await databases.OpenAsync(engine);
        var first = await LetterScene.OfAsync(db);
        var second = await SecondAsync(first);
        Assert.Null((await first.Book.ReadAsync(Teacher, second.Code, Ct))!.Before);
        await first.SentAsync();

        Assert.Null((await first.Book.ReadAsync(Teacher, second.Code, Ct))!.Before);
    }

    [Theory, OnBothEngines]
    public async Task A_lesson_in_the_teacher_s_own_words_is_remembered_too(ClinicEngine engine)
    {
        const string words = "Let a reed dry for a night before you judge it.";
        var db = await databases.OpenAsync(engine);
        var first = await LetterScene.OfAsync(db);
        var threads = new CommonThreadBook(db, TimeProvider.System);
        var stands = (await threads.FindAsync(Teacher, first.Code, Ct))!.Version;
        Done(await threads.ChooseAsync(Teacher, first.Code, new ThreadChoice(LessonWords: words), stands, Operation(), Ct));
        await first.SentAsync();
        var second = await SecondAsync(first);

        var letter = await first.Book.ReadAsync(Teacher, second.Code, Ct);

        Assert.Contains($"“{words}”", letter!.Draft.Blocks.Single(block => block.Key == "greeting").Text, StringComparison.Ordinal);
    }

    [Theory, OnBothEngines]
    public async Task Another_student_s_letter_is_none_of_theirs(ClinicEngine engine)
    {
        var db = await databases.OpenAsync(engine);
        var first = await LetterScene.OfAsync(db);
        await first.SentAsync();
        var other = (await first.Intake.BatchAsync(await first.Intake.StudentAsync(), reeds: 2)).Batch;

        Assert.Null((await first.Book.ReadAsync(Teacher, other.Code, Ct))!.Before);
    }

    private static async Task<Batch> SecondAsync(LetterScene first)
    {
        var batch = (await first.Intake.BatchAsync(first.Student, reeds: 2)).Batch;
        var fine = new ReedArrival(Presence.Here, Fitness: Fitness.Fit);
        Done(await first.Intake.Arrival.RecordAsync(Teacher, batch.Id, new(batch.Reeds.ToDictionary(reed => reed.Id, _ => fine), null), batch.Version, Operation(), Ct));
        foreach (var reed in batch.Reeds)
        {
            Done(await new BenchBook(first.Db, TimeProvider.System).RecordAsync(Teacher, reed.Id, Done(LookedFor.Of(new("tip-corners-thick"))), Operation(), Ct));
        }

        return batch;
    }
}
