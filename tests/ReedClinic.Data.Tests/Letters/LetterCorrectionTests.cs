using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Intake;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.Letters;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Letters;

public sealed class LetterCorrectionTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private const string Wrong = "Lesson";

    [Theory, OnBothEngines]
    public async Task A_correction_begins_with_what_was_sent_although_the_bench_has_moved_on(ClinicEngine engine)
    {
        var scene = await SceneAsync(engine);
        var sent = await scene.SentAsync();
        await scene.SayAsync(1, Verdict.Of(VerdictKind.NotToBeSaved));

        var begun = await scene.BegunAsync();
        var saved = Done(await scene.Book.SaveAsync(Teacher, scene.Code, Edit("habit", "Perhaps the knife turns late."), begun.Version, Operation(), Ct));

        Assert.Equal(Texts(sent.Draft), Texts(begun.Draft));
        Assert.Equal((true, false), (begun.IsCorrection, begun.IsSent));
        Assert.Empty(begun.Gaps);
        Assert.Equal(["habit"], saved.Draft.Blocks.Where(block => block.Text != Text(sent.Draft, block.Key)).Select(block => block.Key));
        Assert.Equal(Texts(sent.Draft), Texts((await scene.Box.ReadAsync(scene.Student, scene.Code, Ct))!.Letter));
        var back = Done(await scene.Book.SaveAsync(Teacher, scene.Code, Edit("habit", Text(sent.Draft, "habit")), saved.Version, Operation(), Ct));
        Assert.Equal(sent.Mark, back.Mark);
    }

    [Theory, OnBothEngines]
    public async Task Lists_tell_of_a_correction_that_is_begun_and_of_one_that_was_sent(ClinicEngine engine)
    {
        var scene = await SceneAsync(engine);
        await scene.SentAsync();
        var desk = new DeskBook(scene.Db, TimeProvider.System, scene.Db.Outbox);
        async Task<BatchRow> RowAsync() => (await desk.MineAsync(scene.Student, Ct)).Single(row => row.Code == scene.Code);
        var sent = await RowAsync();

        var begun = await scene.BegunAsync();
        var beginning = await RowAsync();
        Done(await scene.Corrections.DropAsync(Teacher, scene.Code, begun.Version, Operation(), Ct));
        var dropped = await RowAsync();
        await scene.CorrectedAsync("Mind the corners.", "The lesson named the wrong place.");
        var corrected = await RowAsync();

        Assert.Equal([(false, false), (true, false), (false, false), (false, true)],
            new[] { sent, beginning, dropped, corrected }.Select(row => (row.IsBeingCorrected, row.CorrectedAt is not null)));
        Assert.Equal(corrected.CorrectedAt, (await desk.BatchAsync(scene.Student, scene.Code, Ct))!.CorrectedAt);
    }

    [Theory, OnBothEngines]
    public async Task A_correction_is_a_new_sending_and_the_one_before_stays_word_for_word(ClinicEngine engine)
    {
        var scene = await SceneAsync(engine);
        var first = await scene.SentAsync();
        await scene.CorrectedAsync("Mind the corners.", "The lesson named the wrong place.");
        await scene.CorrectedAsync("Mind both corners.", "It is both corners.");

        var newest = (await scene.Box.ReadAsync(scene.Student, scene.Code, Ct))!;
        var second = (await scene.Box.ReadSendingAsync(scene.Student, scene.Code, 2, Ct))!;
        var one = (await scene.Box.ReadSendingAsync(scene.Student, scene.Code, 1, Ct))!;

        Assert.Equal((3, "It is both corners.", "Mind both corners."), (newest.Ordinal, newest.WhatChanged, Text(newest.Letter, "lesson")));
        Assert.Equal((2, "The lesson named the wrong place.", "Mind the corners."), (second.Ordinal, second.WhatChanged, Text(second.Letter, "lesson")));
        Assert.Equal((1, null, first.Mark), (one.Ordinal, one.WhatChanged, MarkOf(first, one)));
        Assert.Equal((null, (DateTimeOffset?)one.SentAt, (DateTimeOffset?)second.SentAt), (newest.ReplacedAt, second.Replaces, newest.Replaces));
        Assert.Equal((newest.SentAt, second.SentAt), (second.ReplacedAt!.Value, one.ReplacedAt!.Value));
        Assert.Null(await scene.Box.ReadSendingAsync(scene.Student, scene.Code, 4, Ct));
        Assert.Null(await scene.Box.ReadSendingAsync(await scene.Intake.StudentAsync("Tove Lind"), scene.Code, 1, Ct));
        Assert.Equal("Mind both corners.", (await scene.Box.LastLessonAsync(scene.Student, Ct))!.Lesson);
        Assert.Equal(3, (await scene.ReadAsync()).Versions.Count(version => version.IsSent));
        await using var context = scene.Db.CreateDbContext();
        Assert.Equal(2, await context.Set<AuditNote>().CountAsync(note => note.Event == AuditEvent.LetterCorrected && note.What == scene.Batch.Id.Value, Ct));
        Assert.Equal(one.SentAt, (await context.Set<Batch>().SingleAsync(row => row.Id == scene.Batch.Id, Ct)).LetterSentAt);
    }

    [Theory, OnBothEngines]
    public async Task A_repeated_operation_begins_says_sends_and_drops_once(ClinicEngine engine)
    {
        var scene = await SceneAsync(engine);
        await scene.SentAsync();
        var version = (await scene.ReadAsync()).Version;
        var (begin, send, drop) = (Operation(), Operation(), Operation());
        var begun = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() => scene.Corrections.BeginAsync(Teacher, scene.Code, version, begin, Ct), Ct)));
        var said = Done(await scene.Corrections.SayAsync(Teacher, scene.Code, null, Wrong, Operation(), Ct));
        var sent = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() => scene.Corrections.SendAsync(Teacher, scene.Code, said.Mark, Wrong, send, Ct), Ct)));
        Assert.All(begun, outcome => Done(outcome));
        Assert.All(sent, outcome => Assert.True(Done(outcome).IsSent));
        await using var context = scene.Db.CreateDbContext();
        Assert.Equal(2, await context.Set<LetterSending>().CountAsync(row => row.Batch == scene.Batch.Id, Ct));

        var again = await scene.BegunAsync();
        Done(await scene.Corrections.DropAsync(Teacher, scene.Code, again.Version, drop, Ct));
        await scene.BegunAsync();
        Assert.True(Done(await scene.Corrections.DropAsync(Teacher, scene.Code, again.Version, drop, Ct)).IsCorrection);
    }

    [Theory, OnBothEngines]
    public async Task A_correction_that_was_dropped_leaves_nothing_in_the_next_one(ClinicEngine engine)
    {
        var scene = await SceneAsync(engine);
        var sent = await scene.SentAsync();
        var begun = await scene.BegunAsync();
        Done(await scene.Book.SaveAsync(Teacher, scene.Code, Edit("lesson", "Something rash."), begun.Version, Operation(), Ct));
        var said = Done(await scene.Corrections.SayAsync(Teacher, scene.Code, null, "Something rash.", Operation(), Ct));

        var dropped = Done(await scene.Corrections.DropAsync(Teacher, scene.Code, said.Version, Operation(), Ct));
        var again = await scene.BegunAsync();

        Assert.True(dropped.IsSent);
        Assert.Equal((sent.Mark, sent.Mark), (dropped.Mark, again.Mark));
        Assert.Null(again.WhatChanged);
        Assert.Equal(1, (await scene.Box.ReadAsync(scene.Student, scene.Code, Ct))!.Ordinal);
    }

    [Theory, OnBothEngines]
    public async Task Of_two_teachers_who_correct_the_second_is_shown_what_stands(ClinicEngine engine)
    {
        var scene = await SceneAsync(engine);
        var opened = await scene.SentAsync();
        var begun = Done(await scene.Corrections.BeginAsync(Teacher, scene.Code, opened.Version, Operation(), Ct));
        var second = await scene.Corrections.BeginAsync(Teacher, scene.Code, opened.Version, Operation(), Ct);
        Done(await scene.Book.SaveAsync(Teacher, scene.Code, Edit("lesson", "Hers."), begun.Version, Operation(), Ct));

        var late = await scene.Book.SaveAsync(Teacher, scene.Code, Edit("lesson", "His."), begun.Version, Operation(), Ct);
        var rash = await scene.Corrections.DropAsync(Teacher, scene.Code, begun.Version, Operation(), Ct);
        Done(await scene.Corrections.SayAsync(Teacher, scene.Code, null, Wrong, Operation(), Ct));
        var unread = await scene.Corrections.SendAsync(Teacher, scene.Code, begun.Mark, Wrong, Operation(), Ct);

        Assert.True(Assert.IsType<Outcome<LetterView>.Conflict>(second).Theirs.IsCorrection);
        Assert.Equal("Hers.", Text(Assert.IsType<Outcome<LetterView>.Conflict>(late).Theirs.Draft, "lesson"));
        Assert.IsType<Outcome<LetterView>.Conflict>(rash);
        Assert.IsType<Outcome<LetterView>.Conflict>(unread);
    }

    [Theory, OnBothEngines]
    public async Task A_correction_says_what_was_put_right_before_it_goes_out(ClinicEngine engine)
    {
        var scene = await SceneAsync(engine);
        Assert.IsType<Outcome<LetterView>.Refused>(await scene.Corrections.BeginAsync(Teacher, scene.Code, (await scene.ReadAsync()).Version, Operation(), Ct));
        await scene.SentAsync();
        var begun = await scene.BegunAsync();

        var silent = await scene.Corrections.SendAsync(Teacher, scene.Code, begun.Mark, null, Operation(), Ct);
        var blank = Done(await scene.Corrections.SayAsync(Teacher, scene.Code, null, "  ", Operation(), Ct));
        var tooLong = await scene.Corrections.SayAsync(Teacher, scene.Code, null, new string('x', LetterSending.LongestWhatChanged + 1), Operation(), Ct);
        var waived = await scene.Book.WaiveAsync(Teacher, scene.Code, "lesson", "later", Operation(), Ct);

        Assert.Equal("WhatChanged", Assert.Single(Assert.IsType<Outcome<LetterView>.Refused>(silent).Problems).Field);
        Assert.Null(blank.WhatChanged);
        Assert.Equal("WhatChanged", Assert.Single(Assert.IsType<Outcome<LetterView>.Refused>(tooLong).Problems).Field);
        Assert.IsType<Outcome<LetterView>.Refused>(waived);
        Assert.IsType<Outcome<LetterView>.Refused>(await scene.Book.RewriteAsync(Teacher, scene.Code, "lesson", new PartWish.Afresh(), begun.Version, Operation(), Ct));
        Assert.IsType<Outcome<LetterView>.Refused>(await scene.Book.SendAsync(Teacher, scene.Code, begun.Mark, Operation(), Ct));
    }

    [Theory, OnBothEngines]
    public async Task Nothing_is_corrected_while_consent_is_taken_back(ClinicEngine engine)
    {
        var scene = await SceneAsync(engine);
        var sent = await scene.SentAsync();
        await using var db = scene.Db.CreateDbContext();
        await db.Set<Student>().Where(row => row.Id == scene.Batch.Student).ExecuteUpdateAsync(rows => rows.SetProperty(row => row.Age, AgeAnswer.Younger), Ct);

        var refused = await scene.Corrections.BeginAsync(Teacher, scene.Code, sent.Version, Operation(), Ct);

        Assert.IsType<Outcome<LetterView>.Refused>(refused);
        Assert.True((await scene.ReadAsync()).IsSent);
    }

    [Theory, OnBothEngines]
    public async Task A_correction_is_dropped_also_while_consent_is_taken_back(ClinicEngine engine)
    {
        var scene = await SceneAsync(engine);
        await scene.SentAsync();
        var begun = await scene.BegunAsync();
        await using var db = scene.Db.CreateDbContext();
        await db.Set<Student>().Where(row => row.Id == scene.Batch.Student).ExecuteUpdateAsync(rows => rows.SetProperty(row => row.Age, AgeAnswer.Younger), Ct);

        Assert.IsType<Outcome<LetterView>.Refused>(await scene.Corrections.SayAsync(Teacher, scene.Code, null, Wrong, Operation(), Ct));
        Assert.True(Done(await scene.Corrections.DropAsync(Teacher, scene.Code, begun.Version, Operation(), Ct)).IsSent);
    }

    [Theory, OnBothEngines]
    public async Task What_was_put_right_is_said_and_sent_only_as_it_was_looked_at(ClinicEngine engine)
    {
        var scene = await SceneAsync(engine);
        await scene.SentAsync();
        await scene.BegunAsync();
        var hers = Done(await scene.Corrections.SayAsync(Teacher, scene.Code, null, "Hers.", Operation(), Ct));

        var erased = await scene.Corrections.SayAsync(Teacher, scene.Code, null, "", Operation(), Ct);
        var over = await scene.Corrections.SayAsync(Teacher, scene.Code, null, "His.", Operation(), Ct);
        var unread = await scene.Corrections.SendAsync(Teacher, scene.Code, hers.Mark, "His.", Operation(), Ct);

        Assert.IsType<Outcome<LetterView>.Conflict>(erased);
        Assert.Equal("Hers.", Assert.IsType<Outcome<LetterView>.Conflict>(over).Theirs.WhatChanged);
        Assert.IsType<Outcome<LetterView>.Conflict>(unread);
        Assert.Equal("His.", Done(await scene.Corrections.SayAsync(Teacher, scene.Code, "Hers.", "His.", Operation(), Ct)).WhatChanged);
        Assert.True(Done(await scene.Corrections.SendAsync(Teacher, scene.Code, hers.Mark, " His. ", Operation(), Ct)).IsSent);
    }

    [Theory, OnBothEngines]
    public async Task The_mail_says_that_it_is_a_corrected_letter_and_its_state_follows_the_newest(ClinicEngine engine)
    {
        var scene = await SceneAsync(engine);
        await scene.HasAddressAsync();
        await scene.SentAsync();
        var mails = new LetterMailBook(scene.Db, TimeProvider.System, scene.Db.Outbox);
        var board = new JobBoard(scene.Db, TimeProvider.System);
        var first = (await board.ClaimAsync(JobKind.Mail, Ct))!;
        Assert.True(await board.DoneAsync(first, Ct));
        await scene.CorrectedAsync("Mind the corners.", "The lesson named the wrong place.");

        Assert.Equal(LetterMailState.Waiting, (await mails.LookAsync(Teacher, scene.Code, Ct))!.State);
        var second = (await board.ClaimAsync(JobKind.Mail, Ct))!;
        Assert.Equal((Mail.Corrected, $"/letters/{scene.Code}"), (scene.Db.Outbox.Open(second)!.What, scene.Db.Outbox.Open(second)!.Path));
        Assert.True(await board.DoneAsync(second, Ct));
        Done(await mails.AgainAsync(Teacher, scene.Code, Operation(), Ct));
        Assert.Equal(Mail.Corrected, scene.Db.Outbox.Open((await board.ClaimAsync(JobKind.Mail, Ct))!)!.What);
    }

    [Theory, OnBothEngines]
    public async Task A_mail_whose_try_failed_tells_when_it_is_tried_next_and_is_tried_at_once_where_asked(ClinicEngine engine)
    {
        var scene = await SceneAsync(engine);
        await scene.HasAddressAsync();
        await scene.SentAsync();
        var mails = new LetterMailBook(scene.Db, TimeProvider.System, scene.Db.Outbox);
        var board = new JobBoard(scene.Db, TimeProvider.System);
        Assert.IsType<Outcome<LetterMail>.Refused>(await mails.AgainAsync(Teacher, scene.Code, Operation(), Ct));
        var first = (await board.ClaimAsync(JobKind.Mail, Ct))!;
        Assert.True(await board.FailedAsync(first, "The mail server took too long.", forEver: false, Ct));
        var failed = (await mails.LookAsync(Teacher, scene.Code, Ct))!;
        Assert.Equal((LetterMailState.Waiting, 1), (failed.State, failed.Tries));
        Assert.Null(await board.ClaimAsync(JobKind.Mail, Ct));

        var now = Done(await mails.AgainAsync(Teacher, scene.Code, Operation(), Ct));

        Assert.True(now.Next < failed.Next);
        var again = (await board.ClaimAsync(JobKind.Mail, Ct))!;
        Assert.Equal(first.Id, again.Id);
        Assert.IsType<Outcome<LetterMail>.Refused>(await mails.AgainAsync(Teacher, scene.Code, Operation(), Ct));
        Assert.True(await board.DoneAsync(again, Ct));
        Assert.Null(await board.ClaimAsync(JobKind.Mail, Ct));
    }

    [Theory, OnBothEngines]
    public async Task Nothing_changes_what_was_sent_not_even_a_statement_of_ones_own(ClinicEngine engine)
    {
        var scene = await SceneAsync(engine);
        await scene.SentAsync();
        await using var db = scene.Db.CreateDbContext();
        var (sendings, versions) = (db.Set<LetterSending>().Where(row => row.Batch == scene.Batch.Id), db.Set<LetterVersion>().Where(row => row.Batch == scene.Batch.Id));

        await Assert.ThrowsAnyAsync<System.Data.Common.DbException>(() => sendings.ExecuteUpdateAsync(rows => rows.SetProperty(row => row.WhatChanged, "Another."), Ct));
        await Assert.ThrowsAnyAsync<System.Data.Common.DbException>(() => sendings.ExecuteUpdateAsync(rows => rows.SetProperty(row => row.VersionNumber, 1), Ct));
        await Assert.ThrowsAnyAsync<System.Data.Common.DbException>(() => sendings.ExecuteUpdateAsync(rows => rows.SetProperty(row => row.SentAt, DateTimeOffset.UnixEpoch), Ct));
        await Assert.ThrowsAnyAsync<System.Data.Common.DbException>(() => versions.ExecuteUpdateAsync(rows => rows.SetProperty(row => row.Payload, "{}"), Ct));
        Assert.Null((await sendings.AsNoTracking().SingleAsync(Ct)).WhatChanged);
    }

    private async Task<LetterScene> SceneAsync(ClinicEngine engine) => await LetterScene.OfAsync(await databases.FreshAsync(engine));

    private static Dictionary<string, string> Edit(string key, string text) => new() { [key] = text };

    private static string Text(LetterDraft letter, string key) => letter.Blocks.Single(block => block.Key == key).Text;

    private static IEnumerable<string> Texts(LetterDraft letter) => letter.Blocks.Select(block => block.Text);

    private static string MarkOf(LetterView view, SentLetter sent) => Texts(view.Draft).SequenceEqual(Texts(sent.Letter)) ? view.Mark : "";
}
