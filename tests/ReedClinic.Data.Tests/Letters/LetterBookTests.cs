using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.Letters;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Letters;

public sealed class LetterBookTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task A_letter_follows_the_log_until_a_block_is_changed(ClinicEngine engine)
    {
        var scene = await SceneAsync(engine);
        var first = await scene.ReadAsync();
        var saved = Done(await scene.Book.SaveAsync(
            Teacher, scene.Code, new Dictionary<string, string> { ["lesson"] = "My own lesson." }, first.Version, Operation(), Ct));

        await scene.SayAsync(1, Verdict.Of(VerdictKind.NeedsPlayingIn));
        var now = await scene.ReadAsync();

        Assert.Equal("My own lesson.", Text(now.Draft, "lesson"));
        Assert.Contains("a week", Text(now.Draft, "reed-1-use"), StringComparison.Ordinal);
        Assert.Equal(1, Assert.Single(saved.Versions).Number);
        Assert.Equal("My own lesson.", Text((await scene.Book.VersionAsync(Teacher, scene.Code, 1, Ct))!, "lesson"));
        Assert.Null(await scene.Book.VersionAsync(Teacher, scene.Code, 2, Ct));
    }

    [Theory, OnBothEngines]
    public async Task Of_two_teachers_the_second_is_shown_what_stands(ClinicEngine engine)
    {
        var scene = await SceneAsync(engine);
        var opened = await scene.ReadAsync();
        var operation = Operation();
        Done(await scene.Book.SaveAsync(Teacher, scene.Code, Edit("habit", "Hers."), opened.Version, operation, Ct));

        var late = await scene.Book.SaveAsync(Teacher, scene.Code, Edit("habit", "His."), opened.Version, Operation(), Ct);
        var repeated = Done(await scene.Book.SaveAsync(Teacher, scene.Code, Edit("habit", "Hers."), opened.Version, operation, Ct));

        Assert.Equal("Hers.", Text(Assert.IsType<Outcome<LetterView>.Conflict>(late).Theirs.Draft, "habit"));
        Assert.Single(repeated.Versions);
    }

    [Theory, OnBothEngines]
    public async Task Gaps_are_mended_or_waived_before_a_letter_goes_out(ClinicEngine engine)
    {
        var scene = await SceneAsync(engine);
        var draft = await scene.ReadAsync();
        Assert.Equal([GapKind.UnansweredQuestion, GapKind.ReedWithoutVerdict], draft.Gaps.Select(gap => gap.Kind));

        var refused = await scene.Book.SendAsync(Teacher, scene.Code, draft.Mark, Operation(), Ct);
        Assert.Equal(2, Assert.IsType<Outcome<LetterView>.Refused>(refused).Problems.Count);

        var question = draft.Gaps[0].Question!.Value;
        Assert.IsType<Outcome<LetterView>.Refused>(await scene.Book.AnswerAsync(Teacher, scene.Code, question, " ", Operation(), Ct));
        var answered = Done(await scene.Book.AnswerAsync(Teacher, scene.Code, question, "Number one.", Operation(), Ct));
        Assert.Contains("Number one.", Text(answered.Draft, "answers"), StringComparison.Ordinal);

        var gap = Assert.Single(answered.Gaps);
        Assert.IsType<Outcome<LetterView>.Refused>(await scene.Book.WaiveAsync(Teacher, scene.Code, gap.Key, "", Operation(), Ct));
        var waived = Done(await scene.Book.WaiveAsync(Teacher, scene.Code, gap.Key, "it follows by mail", Operation(), Ct));
        Assert.Empty(waived.Gaps);
        Assert.Equal("it follows by mail", Assert.Single(waived.Waived).Reason);
        var again = Done(await scene.Book.WaiveAsync(Teacher, scene.Code, gap.Key, null, Operation(), Ct));
        Assert.Single(again.Gaps);

        await scene.SayAsync(2, Verdict.Of(VerdictKind.LeftAsItCame));
        var ready = await scene.ReadAsync();
        Assert.Empty(ready.Gaps);
        Assert.True(Done(await scene.Book.SendAsync(Teacher, scene.Code, ready.Mark, Operation(), Ct)).IsSent);
    }

    [Theory, OnBothEngines]
    public async Task A_letter_is_sent_once_and_never_changes(ClinicEngine engine)
    {
        var scene = await SceneAsync(engine);
        var ready = await scene.ReadyAsync();
        var operation = Operation();

        var sent = await Task.WhenAll(Enumerable.Range(0, 6)
            .Select(_ => Task.Run(() => scene.Book.SendAsync(Teacher, scene.Code, ready.Mark, operation, Ct), Ct)));
        var before = (await scene.Box.ReadAsync(scene.Student, scene.Code, Ct))!;
        await scene.SayAsync(1, Note.Of("an afterthought"));
        await scene.SayAsync(1, Verdict.Of(VerdictKind.NotToBeSaved));
        var other = await scene.Book.SendAsync(Teacher, scene.Code, (await scene.ReadAsync()).Mark, Operation(), Ct);
        var changed = await scene.Book.SaveAsync(
            Teacher, scene.Code, Edit("lesson", "Another."), (await scene.ReadAsync()).Version, Operation(), Ct);
        var after = (await scene.Box.ReadAsync(scene.Student, scene.Code, Ct))!;

        Assert.All(sent, outcome => Assert.True(Done(outcome).IsSent));
        Assert.Single(sent.Select(outcome => Done(outcome).SentAt).Distinct());
        Assert.IsType<Outcome<LetterView>.Refused>(other);
        Assert.IsType<Outcome<LetterView>.Refused>(changed);
        Assert.Equal(LetterTexts(before.Letter), LetterTexts(after.Letter));
        Assert.Equal(before.SentAt, after.SentAt);
        var batch = (await scene.Intake.Desk.BatchAsync(scene.Student, scene.Code, Ct))!.Batch;
        Assert.Equal((Stage.LetterSent, before.SentAt), (batch.Stage, batch.LetterSentAt));
        await using var context = scene.Db.CreateDbContext();
        Assert.Equal(1, await context.Set<LetterVersion>().CountAsync(version => version.Batch == batch.Id, Ct));
    }

    [Theory, OnBothEngines]
    public async Task What_was_not_looked_at_is_not_sent(ClinicEngine engine)
    {
        var scene = await SceneAsync(engine);
        var looked = await scene.ReadyAsync();

        await scene.SayAsync(1, Verdict.Of(VerdictKind.NotToBeSaved));
        var sent = await scene.Book.SendAsync(Teacher, scene.Code, looked.Mark, Operation(), Ct);

        Assert.False(Assert.IsType<Outcome<LetterView>.Conflict>(sent).Theirs.IsSent);
        Assert.Null(await scene.Box.ReadAsync(scene.Student, scene.Code, Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_student_reads_their_own_letter_and_nobody_elses(ClinicEngine engine)
    {
        var scene = await SceneAsync(engine);
        var other = await scene.Intake.StudentAsync("Tove Lind");
        Assert.Null(await scene.Box.ReadAsync(scene.Student, scene.Code, Ct));
        var ready = await scene.ReadyAsync();
        Done(await scene.Book.SendAsync(Teacher, scene.Code, ready.Mark, Operation(), Ct));

        var mine = await scene.Box.ReadAsync(scene.Student, scene.Code, Ct);

        Assert.Equal(LetterTexts(ready.Draft), LetterTexts(mine!.Letter));
        Assert.Equal(ready.Draft.Reeds.SelectMany(reed => reed.Marks), mine.Letter.Reeds.SelectMany(reed => reed.Marks));
        Assert.Equal(
            ready.Draft.Blocks.SelectMany(block => block.Paragraphs).SelectMany(p => p.Sentences).SelectMany(s => s.From),
            mine.Letter.Blocks.SelectMany(block => block.Paragraphs).SelectMany(p => p.Sentences).SelectMany(s => s.From));
        Assert.Null(await scene.Box.ReadAsync(other, scene.Code, Ct));
        Assert.NotNull(await scene.Box.ReadAsync(Teacher, scene.Code, Ct));
        foreach (var stranger in new[] { scene.Student, other })
        {
            Assert.Null(await scene.Book.ReadAsync(stranger, scene.Code, Ct));
            Assert.Null(await scene.Book.VersionAsync(stranger, scene.Code, 1, Ct));
            Assert.IsType<Outcome<LetterView>.NotFound>(
                await scene.Book.SendAsync(stranger, scene.Code, ready.Mark, Operation(), Ct));
        }

        var lesson = await scene.Box.LastLessonAsync(scene.Student, Ct);
        Assert.Equal(scene.Code, lesson!.Code);
        Assert.Contains(" of the tip", lesson.Lesson, StringComparison.Ordinal);
        Assert.InRange(lesson.Plan.Count, 1, 5);
        Assert.Null(await scene.Box.LastLessonAsync(other, Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_text_that_cannot_be_kept_is_refused_beside_its_block(ClinicEngine engine)
    {
        var scene = await SceneAsync(engine);
        var view = await scene.ReadAsync();

        var refused = await scene.Book.SaveAsync(
            Teacher, scene.Code, Edit("lesson", new string('x', LetterBlock.LongestText + 1)), view.Version, Operation(), Ct);

        Assert.Equal("lesson", Assert.Single(Assert.IsType<Outcome<LetterView>.Refused>(refused).Problems).Field);
        Assert.Empty((await scene.ReadAsync()).Versions);
    }

    [Theory, OnBothEngines]
    public async Task A_part_is_written_anew_as_a_version_and_what_stood_there_is_taken_back(ClinicEngine engine)
    {
        var scene = await SceneAsync(engine);
        var texts = new Dictionary<string, string> { ["lesson"] = "My own lesson.", ["habit"] = "My own habit." };
        var mine = Done(await scene.Book.SaveAsync(Teacher, scene.Code, texts, (await scene.ReadAsync()).Version, Operation(), Ct));
        var operation = Operation();

        var fresh = Done(await scene.Book.RewriteAsync(Teacher, scene.Code, "lesson", new PartWish.Afresh(), mine.Version, operation, Ct));
        var repeated = Done(await scene.Book.RewriteAsync(Teacher, scene.Code, "lesson", new PartWish.Afresh(), mine.Version, operation, Ct));
        var late = await scene.Book.RewriteAsync(Teacher, scene.Code, "habit", new PartWish.Afresh(), mine.Version, Operation(), Ct);

        Assert.Equal((Text(fresh.Composed, "lesson"), "My own habit."), (Text(fresh.Draft, "lesson"), Text(fresh.Draft, "habit")));
        Assert.Equal(2, repeated.Versions.Count);
        Assert.Equal("My own habit.", Text(Assert.IsType<Outcome<LetterView>.Conflict>(late).Theirs.Draft, "habit"));

        var other = Done(await scene.Book.RewriteAsync(Teacher, scene.Code, "reed-1-story", new PartWish.OtherWords(), fresh.Version, Operation(), Ct));
        Assert.NotEqual(Text(fresh.Draft, "reed-1-story"), Text(other.Draft, "reed-1-story"));
        Assert.Equal(Text(other.Draft, "reed-1-story"), Text((await scene.ReadAsync()).Draft, "reed-1-story"));

        var back = Done(await scene.Book.RewriteAsync(Teacher, scene.Code, "lesson", new PartWish.AsIn(1), other.Version, Operation(), Ct));
        Assert.Equal(("My own lesson.", "My own habit."), (Text(back.Draft, "lesson"), Text(back.Draft, "habit")));
        Assert.Equal(Text(other.Draft, "reed-1-story"), Text(back.Draft, "reed-1-story"));

        var none = await scene.Book.RewriteAsync(Teacher, scene.Code, "cautions", new PartWish.OtherWords(), back.Version, Operation(), Ct);
        Assert.Equal("cautions", Assert.Single(Assert.IsType<Outcome<LetterView>.Refused>(none).Problems).Field);
    }

    private static Dictionary<string, string> Edit(string key, string text) => new() { [key] = text };

    private static string Text(LetterDraft letter, string key) => letter.Blocks.Single(block => block.Key == key).Text;

    private static IEnumerable<string> LetterTexts(LetterDraft letter) => letter.Blocks.Select(block => block.Text);

    [Theory, OnBothEngines]
    public async Task The_mail_about_a_letter_is_told_as_it_stands_and_goes_once_more_when_somebody_asks(ClinicEngine engine)
    {
        var scene = await SceneAsync(engine);
        var mails = new LetterMailBook(scene.Db, TimeProvider.System, scene.Db.Outbox);
        var board = new JobBoard(scene.Db, TimeProvider.System);
        Assert.Null(await mails.LookAsync(Teacher, scene.Code, Ct));
        Assert.IsType<Outcome<LetterMail>.NotFound>(await mails.AgainAsync(Teacher, scene.Code, Operation(), Ct));
        Done(await scene.Book.SendAsync(Teacher, scene.Code, (await scene.ReadyAsync()).Mark, Operation(), Ct));
        Assert.Equal(LetterMailState.None, (await mails.LookAsync(Teacher, scene.Code, Ct))!.State);
        Assert.IsType<Outcome<LetterMail>.Refused>(await mails.AgainAsync(Teacher, scene.Code, Operation(), Ct));
        await scene.HasAddressAsync();
        Assert.Equal(LetterMailState.Forgotten, (await mails.LookAsync(Teacher, scene.Code, Ct))!.State);
        Done(await mails.AgainAsync(Teacher, scene.Code, Operation(), Ct));
        Assert.Equal(LetterMailState.Waiting, (await mails.LookAsync(Teacher, scene.Code, Ct))!.State);
        Assert.IsType<Outcome<LetterMail>.Refused>(await mails.AgainAsync(Teacher, scene.Code, Operation(), Ct));

        var first = (await board.ClaimAsync(JobKind.Mail, Ct))!;
        Assert.True(await board.FailedAsync(first, "The mail server refused it (550).", forEver: true, Ct));
        var stuck = (await mails.LookAsync(Teacher, scene.Code, Ct))!;
        Assert.Equal((LetterMailState.GivenUp, "The mail server refused it (550)."), (stuck.State, stuck.Problem));

        var operation = Operation();
        Assert.Equal(LetterMailState.Waiting, Done(await mails.AgainAsync(Teacher, scene.Code, operation, Ct)).State);
        Done(await mails.AgainAsync(Teacher, scene.Code, operation, Ct));
        var second = (await board.ClaimAsync(JobKind.Mail, Ct))!;
        Assert.NotEqual(first.Id, second.Id);
        Assert.Equal($"/letters/{scene.Code}", scene.Db.Outbox.Open(second)!.Path);
        Assert.True(await board.DoneAsync(second, Ct, MailWay.Folder));
        Assert.Null(await board.ClaimAsync(JobKind.Mail, Ct));
        var done = (await mails.LookAsync(Teacher, scene.Code, Ct))!;
        Assert.Equal((LetterMailState.Sent, MailWay.Folder), (done.State, done.Way));
        Done(await mails.AgainAsync(Teacher, scene.Code, Operation(), Ct));
        Assert.Null((await mails.LookAsync(Teacher, scene.Code, Ct))!.Way);
        Assert.True(await board.DoneAsync((await board.ClaimAsync(JobKind.Mail, Ct))!, Ct, MailWay.Posted));
        Assert.Equal(MailWay.Posted, (await mails.LookAsync(Teacher, scene.Code, Ct))!.Way);
        Assert.Null(await mails.LookAsync(scene.Student, scene.Code, Ct));
    }

    [Theory, OnBothEngines]
    public async Task Nobody_who_took_consent_back_is_written_to_about_a_letter(ClinicEngine engine)
    {
        var scene = await SceneAsync(engine);
        var mails = new LetterMailBook(scene.Db, TimeProvider.System, scene.Db.Outbox);
        Done(await scene.Book.SendAsync(Teacher, scene.Code, (await scene.ReadyAsync()).Mark, Operation(), Ct));
        var now = TimeProvider.System.GetUtcNow();
        await using var db = scene.Db.CreateDbContext();
        await db.Set<Student>().ExecuteUpdateAsync(rows => rows.SetProperty(row => row.Age, AgeAnswer.Younger), Ct);
        var answer = new Guardianship(new GuardianshipId(Guid.CreateVersion7(now)), scene.Student.Student!.Value, "Rosa", "rosa@example.org", now);
        answer.Give(new AccountId(Guid.CreateVersion7(now)), now);
        db.Add(answer);
        await db.SaveChangesAsync(Ct);
        Assert.Equal(LetterMailState.Forgotten, (await mails.LookAsync(Teacher, scene.Code, Ct))!.State);

        answer.Withdraw(now);
        await db.SaveChangesAsync(Ct);

        Assert.Equal(LetterMailState.None, (await mails.LookAsync(Teacher, scene.Code, Ct))!.State);
        Assert.IsType<Outcome<LetterMail>.Refused>(await mails.AgainAsync(Teacher, scene.Code, Operation(), Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_reason_for_what_is_not_asked_is_not_taken_and_dropped(ClinicEngine engine)
    {
        var scene = await SceneAsync(engine);

        var answer = await scene.Book.WaiveAsync(Teacher, scene.Code, "bothers-nine", "tell me after a week", Operation(), Ct);

        Assert.Contains("isn’t asked", Assert.Single(Assert.IsType<Outcome<LetterView>.Refused>(answer).Problems).Message, StringComparison.Ordinal);
    }

    private async Task<LetterScene> SceneAsync(ClinicEngine engine) => await LetterScene.OfAsync(await databases.OpenAsync(engine));
}
