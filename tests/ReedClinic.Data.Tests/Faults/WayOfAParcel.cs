using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Intake;
using ReedClinic.Data.Letters;
using ReedClinic.Data.Recordings;
using ReedClinic.Data.Recurrence;
using ReedClinic.Data.Tests.Intake;
using ReedClinic.Data.Tests.Recordings;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Recurrence;
using ReedClinic.Domain.Reeds;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Faults;

/// <summary>Two reeds from the form of their student to the bench and home, with a sound, a letter that is put right, a link, and the next intake.</summary>
internal sealed class WayOfAParcel : WholeWay
{
    private static readonly byte[] Sound = SoundFiles.Wave(1);

    private readonly TestDatabase _db;
    private readonly IntakeScene _scene;
    private readonly LetterBook _letters;
    private Actor _student = new(default, null, false, false);
    private DraftView? _draft;
    private BatchView? _batch;
    private LetterView? _letter;
    private RecordingId? _sound;
    private EntryId? _finding;
    private IntakeForm _form = new();

    public WayOfAParcel(TestDatabase db)
    {
        (_db, _scene) = (db, new IntakeScene(db));
        _letters = new LetterBook(db, TimeProvider.System, db.Outbox);
        Send();
        Record();
        Work();
        Write();
        GoHome();
    }

    private ReedId Reed(int number) => _batch!.Batch.Reeds[number - 1].Id;

    public override async Task PrepareAsync()
    {
        _student = await _scene.StudentAsync();
        await using var context = _db.CreateDbContext();
        await context.Set<Student>().ExecuteUpdateAsync(rows => rows.SetProperty(row => row.Email, "ines@harbour.example"), Ct);
        MakeKeys(_db);
        _form = Form(2);
    }

    private void Send()
    {
        Add("begin an intake", operation => _scene.Intake.StartAsync(_student, operation, Ct), draft => _draft = draft);
        Add("keep what is typed", operation => _scene.Intake.SaveAsync(_student, _draft!.Id, _form, _draft.Version, operation, Ct));
        Add("send it off", operation => _scene.Intake.SubmitAsync(_student, _draft!.Id, operation, Ct), batch => _batch = batch);
    }

    private void Record()
    {
        var files = new RecordingScene(_db);
        Add(
            "begin to send a sound",
            operation => files.Uploads.StartAsync(_student, new RecordingWish(Reed(1), RecordingKind.ArrivalSound, Sound.Length) { Words = "It answers late." }, operation, Ct),
            going => _sound = going.Id);
        AddPlain("send a piece", async () =>
        {
            // Whoever is told that all of it is here goes on, as a browser does.
            var answer = await files.Uploads.AppendAsync(_student, There(_sound), 0, new MemoryStream(Sound), RecordingLimits.Chunk, Ct);
            return answer.Received == Sound.Length;
        });
        Add("finish the sound", operation => files.Uploads.FinishAsync(_student, There(_sound), RecordingScene.Sum(Sound), operation, Ct));
    }

    private void Work()
    {
        var bench = new BenchBook(_db, TimeProvider.System);
        var corners = Done(Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners, Blades.Upper)));
        var fine = new ReedArrival(Presence.Here, Fitness: Fitness.Fit);
        Add("check the parcel in", operation => _scene.Arrival.RecordAsync(
            Teacher, _batch!.Batch.Id, new(_batch.Batch.Reeds.ToDictionary(reed => reed.Id, _ => fine), "dry"), _batch.Batch.Version, operation, Ct));
        Add("note a reed more", operation => _scene.Arrival.AddExtraAsync(Teacher, _batch!.Batch.Id, "no tag", operation, Ct));
        AddPlain("keep what is typed at the bench", () => new BenchDraftBook(_db, TimeProvider.System).KeepAsync(Teacher, Reed(1), "thick corn", Ct));
        Add("say a finding", operation => bench.RecordAsync(Teacher, Reed(1), corners, operation, Ct), fact => _finding = fact.Root);
        Add("say it of the other reed", operation => bench.RecordAsync(Teacher, Reed(2), corners, operation, Ct));
        Add("say several things at once", operation => bench.SayAsync(Teacher, Reed(1), [Bench.Studio.Note("one"), Bench.Studio.Note("two")], operation, Ct));
        Add("put a finding better", operation => bench.CorrectAsync(Teacher, Reed(1), There(_finding), corners, operation, Ct));
        Add("say how it went", operation => bench.RecordAsync(Teacher, Reed(1), Done(Verdict.Of(VerdictKind.Improved)), operation, Ct));
        Add("say it of the other", operation => bench.RecordAsync(Teacher, Reed(2), Done(Verdict.Of(VerdictKind.LeftAsItCame)), operation, Ct));
        Add("take something back", operation => bench.UndoAsync(Teacher, Reed(2), null, operation, Ct));
        Add("say it again", operation => bench.RecordAsync(Teacher, Reed(2), Done(Verdict.Of(VerdictKind.LeftAsItCame)), operation, Ct));
        Add("choose what is common", operation => new CommonThreadBook(_db, TimeProvider.System).ChooseAsync(
            Teacher, _batch!.Batch.Code, new ThreadChoice(new FindingKindId("tip-corners-thick"), HabitWords: "the knife turns early"), Guid.Empty, operation, Ct));
    }

    private void Write()
    {
        BatchCode Code() => _batch!.Batch.Code;
        async Task Look() => _letter = (await _letters.ReadAsync(Teacher, Code(), Ct))!;
        Add("answer a question", operation => _letters.AnswerAsync(Teacher, Code(), _batch!.Batch.Questions[0].Id, "Number one.", operation, Ct));
        Add("change the letter's words", operation => _letters.SaveAsync(
            Teacher, Code(), new Dictionary<string, string> { ["lesson"] = "Hold the knife flatter." }, _letter!.Version, operation, Ct), look: Look);
        for (var gap = 0; gap < 6; gap++)
        {
            Add("leave a gap open", async operation => _letter!.Gaps is [var first, ..]
                ? await _letters.WaiveAsync(Teacher, Code(), first.Key, "next time", operation, Ct)
                : new Domain.Outcomes.Outcome<LetterView>.Done(_letter), look: Look);
        }

        Add("send the letter", operation => _letters.SendAsync(Teacher, Code(), _letter!.Mark, operation, Ct), look: Look);
        var links = new LetterLinkBook(_db, TimeProvider.System, _db.Services.GetRequiredService<MediaFolder>());
        Add("make a link", operation => links.MakeAsync(Teacher, Code(), LetterLink.Lives[0], operation, Ct));
        AddPlain("read by a link", async () => await links.ReadAsync(KnownSecret.Secret, Ct) is not null, KnowSecretAsync);
        var corrections = new LetterCorrectionBook(_db, TimeProvider.System, _db.Outbox);
        Add("begin to put it right", operation => corrections.BeginAsync(Teacher, Code(), _letter!.Version, operation, Ct), look: Look);
        Add("say what was put right", operation => corrections.SayAsync(Teacher, Code(), null, "The lesson.", operation, Ct));
        Add("send it again", operation => corrections.SendAsync(Teacher, Code(), _letter!.Mark, "The lesson.", operation, Ct), look: Look);
    }

    private void GoHome()
    {
        Add("post them by mistake", operation => _scene.Desk.MoveOnAsync(Teacher, _batch!.Batch.Id, Stage.OnItsWayHome, operation, Ct));
        Add("take that back", operation => _scene.Desk.TakePostingBackAsync(Teacher, _batch!.Batch.Id, operation, Ct));
        Add("post them", operation => _scene.Desk.MoveOnAsync(Teacher, _batch!.Batch.Id, Stage.OnItsWayHome, operation, Ct));
        Add("they are home", operation => _scene.Desk.MoveOnAsync(Teacher, _batch!.Batch.Id, Stage.Home, operation, Ct));
        Add("begin the next", operation => _scene.Intake.StartAsync(_student, operation, Ct), draft => _draft = draft);
        Add("throw it away", operation => _scene.Intake.DropAsync(_student, _draft!.Id, _draft.Version, operation, Ct));
    }

    // Its secret is told once, and may have been lost with the answer.
    private async Task KnowSecretAsync()
    {
        await using var context = _db.CreateDbContext();
        await context.Set<LetterLink>().ExecuteUpdateAsync(rows => rows.SetProperty(row => row.SecretHash, KnownSecret.Hash), Ct);
    }
}
