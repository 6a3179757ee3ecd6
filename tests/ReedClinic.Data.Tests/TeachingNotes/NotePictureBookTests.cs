using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using ReedClinic.Data.Letters;
using ReedClinic.Data.Recordings;
using ReedClinic.Data.TeachingNotes;
using ReedClinic.Data.Tests.Intake;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.TeachingNotes;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.TeachingNotes;

/// <summary>Pictures of notes and letters: each row stays as it is, and as long as a letter shows it.</summary>
public sealed class NotePictureBookTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static readonly OwnNoteWords Corners = new("Corners", "Look at {place}.", null, [new("tip-corners-thick")]);

    [Theory, OnBothEngines]
    public async Task A_picture_is_kept_without_what_a_camera_wrote_and_the_same_operation_keeps_one(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var (book, operation) = (Pictures(db), Operation());
        byte[] photo = PictureFiles.Jpeg(before: PictureFiles.Exif(6), behind: "behind the end"u8.ToArray());

        var kept = Done(await book.KeepAsync(Teacher, photo, operation, Ct));
        Assert.Equal(kept, Done(await book.KeepAsync(Teacher, photo, operation, Ct)));
        var other = Done(await book.KeepAsync(Teacher, photo, Operation(), Ct));

        Assert.NotEqual(kept.Key, other.Key);
        Assert.Matches("^[a-z2-9]{12}$", kept.Key);
        var file = (await book.OpenAsync(Teacher, kept.Key, Ct))!;
        var lies = await File.ReadAllBytesAsync(file.Path, Ct);
        Assert.Equal((MediaType.Jpeg, lies.Length, 6), (file.Type, kept.Bytes, MediaFile.WayUp(lies)));
        Assert.Equal(-1, lies.AsSpan().IndexOf("Hidden"u8));
        Assert.Equal(-1, lies.AsSpan().IndexOf("behind"u8));
        Assert.Equal(2, Lying(db));
    }

    [Theory, OnBothEngines]
    public async Task What_is_no_picture_for_print_is_refused_beside_its_field_and_leaves_no_file(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        foreach (var (file, why) in new (byte[] File, string Why)[]
        {
            ([], "nothing in this file"),
            (PictureFiles.WebP(), "PNG and JPEG can"),
            (SoundFiles.Mp3(), "sound"),
            ("<svg xmlns='http://www.w3.org/2000/svg'/>"u8.ToArray(), "PNG and JPEG can"),
            ("<!DOCTYPE html><script>alert(1)</script>"u8.ToArray(), "PNG and JPEG can"),
            (PictureFiles.Png(3000, 3000), "too many pixels"),
            (PictureFiles.Png(depth: 16), "8 bits"),
            (PictureFiles.Png(depth: 1), "8 bits"),
            (PictureFiles.Png()[..30], "isn’t whole"),
            (new byte[NotePicture.MostBytes + 1], "too large"),
        })
        {
            var problem = Assert.Single(Assert.IsType<Outcome<NotePictureView>.Refused>(await Pictures(db).KeepAsync(Teacher, file, Operation(), Ct)).Problems);
            Assert.Equal(nameof(OwnNote.Picture), problem.Field);
            Assert.Contains(why, problem.Message, StringComparison.Ordinal);
        }

        Assert.Equal(0, Lying(db));
    }

    [Theory, OnBothEngines]
    public async Task A_letter_keeps_the_picture_that_it_was_sent_with_whatever_becomes_of_its_note(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var time = new FakeTimeProvider(TimeProvider.System.GetUtcNow());
        var (pictures, notes, letters) = (Pictures(db), new OwnNoteBook(db, TimeProvider.System), new LetterBook(db, TimeProvider.System, db.Outbox));
        var intake = new IntakeScene(db);
        var (student, other) = (await intake.StudentAsync(), await intake.StudentAsync("Tove Lind"));
        var batch = (await intake.BatchAsync(student, reeds: 1)).Batch;
        var theirs = (await intake.BatchAsync(other, reeds: 1)).Batch;
        var (first, second, draft) = (await KeepAsync(pictures), await KeepAsync(pictures), await KeepAsync(pictures));
        var note = Done(await notes.BeginAsync(Teacher, Corners with { Picture = first, PictureWords = "Thick [left] corners." }, Operation(), Ct));
        var offer = Assert.Single(await notes.OfferAsync(Teacher, batch.Code, Ct));
        Assert.EndsWith($"\n\n[picture {first}: Thick [left] corners.]", offer.Text, StringComparison.Ordinal);

        var view = (await letters.ReadAsync(Teacher, batch.Code, Ct))!;
        view = Done(await letters.SaveAsync(Teacher, batch.Code, Closing($"[picture {draft}: Not sent.]"), view.Version, Operation(), Ct));
        view = Done(await letters.SaveAsync(Teacher, batch.Code, Closing($"Look:\n\n[picture {first}: Thick [left] corners.]"), view.Version, Operation(), Ct));
        Assert.NotNull(await pictures.OpenInLetterAsync(Teacher, batch.Code, first, Ct));
        Assert.Null(await pictures.OpenInLetterAsync(student, batch.Code, first, Ct));
        await SendAsync(letters, batch, view);
        note = Done(await notes.WriteAsync(Teacher, note.Id, Corners with { Picture = second, PictureWords = "Thin corners." }, note.Version, Operation(), Ct));
        Done(await notes.RetireAsync(Teacher, note.Id, Corners, true, note.Version, Operation(), Ct));
        time.Advance(TimeSpan.FromDays(30));
        await new MediaCaretaker(db, Folder(db), time, NullLogger<MediaCaretaker>.Instance).SweepAsync(Ct);

        Assert.Equal(2, Lying(db)); // the second stood in a note alone
        Assert.NotNull(await pictures.OpenInLetterAsync(student, batch.Code, first, Ct));
        Assert.Null(await pictures.OpenInLetterAsync(student, batch.Code, draft, Ct));
        Assert.Null(await pictures.OpenInLetterAsync(student, batch.Code, second, Ct));
        Assert.Null(await pictures.OpenInLetterAsync(student, theirs.Code, first, Ct));
        Assert.Null(await pictures.OpenInLetterAsync(other, batch.Code, first, Ct));
        Assert.Null(await pictures.OpenInLetterAsync(other, theirs.Code, first, Ct));
        Assert.Null(await pictures.OpenAsync(student, first, Ct));
        var sent = (await new LetterBoxBook(db).ReadAsync(student, batch.Code, Ct))!;
        Assert.Equal(first, Assert.Single(await pictures.OfLetterAsync(student, sent.Letter, Ct)).Key);
        Assert.Empty(await pictures.OfLetterAsync(other, sent.Letter, Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_picture_that_stands_nowhere_goes_after_a_day_and_none_goes_while_notes_are_changed(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var time = new FakeTimeProvider(TimeProvider.System.GetUtcNow());
        var (pictures, notes) = (new NotePictureBook(db, Folder(db), time), new OwnNoteBook(db, time));
        var caretaker = new MediaCaretaker(db, Folder(db), time, NullLogger<MediaCaretaker>.Instance);
        var (stays, goes) = (await KeepAsync(pictures), await KeepAsync(pictures));
        time.Advance(TimeSpan.FromDays(2));
        Done(await notes.BeginAsync(Teacher, Corners with { Picture = stays, PictureWords = "A reed." }, Operation(), Ct));

        await caretaker.SweepAsync(Ct);
        Assert.NotNull(await pictures.OpenAsync(Teacher, goes, Ct));
        time.Advance(TimeSpan.FromHours(24));
        await caretaker.SweepAsync(Ct);

        Assert.Null(await pictures.OpenAsync(Teacher, goes, Ct));
        Assert.NotNull(await pictures.OpenAsync(Teacher, stays, Ct));
        Assert.Equal(1, Lying(db));
    }

    [Theory, OnBothEngines]
    public async Task With_a_note_its_picture_goes_after_a_day_but_not_out_of_a_letter_which_is_told_before(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var time = new FakeTimeProvider(TimeProvider.System.GetUtcNow());
        var (pictures, notes, letters) = (new NotePictureBook(db, Folder(db), time), new OwnNoteBook(db, time), new LetterBook(db, time, db.Outbox));
        var caretaker = new MediaCaretaker(db, Folder(db), time, NullLogger<MediaCaretaker>.Instance);
        var batch = (await new IntakeScene(db).BatchAsync(await new IntakeScene(db).StudentAsync(), reeds: 1)).Batch;
        var (used, loose) = (await KeepAsync(pictures), await KeepAsync(pictures));
        var first = Done(await notes.BeginAsync(Teacher, Corners with { Picture = used, PictureWords = "A reed." }, Operation(), Ct));
        var second = Done(await notes.BeginAsync(Teacher, Corners with { Picture = loose, PictureWords = "A reed." }, Operation(), Ct));
        var view = (await letters.ReadAsync(Teacher, batch.Code, Ct))!;
        Done(await letters.SaveAsync(Teacher, batch.Code, Closing($"[picture {used}: A reed.]"), view.Version, Operation(), Ct));
        Assert.Equal([batch.Code], (await notes.FindAsync(Teacher, first.Id, Ct))!.InUnsent);
        Assert.Empty((await notes.FindAsync(Teacher, second.Id, Ct))!.InUnsent);

        time.Advance(TimeSpan.FromDays(3));
        Done(await notes.DeleteAsync(Teacher, first.Id, first.Version, Operation(), Ct));
        Done(await notes.DeleteAsync(Teacher, second.Id, second.Version, Operation(), Ct));
        await caretaker.SweepAsync(Ct);
        Assert.NotNull(await pictures.OpenAsync(Teacher, loose, Ct));
        time.Advance(TimeSpan.FromHours(25));
        await caretaker.SweepAsync(Ct);

        Assert.Null(await pictures.OpenAsync(Teacher, loose, Ct));
        Assert.NotNull(await pictures.OpenAsync(Teacher, used, Ct));
        Assert.DoesNotContain((await letters.ReadAsync(Teacher, batch.Code, Ct))!.Gaps, gap => gap.Kind == GapKind.UnknownPicture);
    }

    [Theory, OnBothEngines]
    public async Task A_picture_that_there_isnt_keeps_a_letter_from_going_and_cant_be_waived(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var letters = new LetterBook(db, TimeProvider.System, db.Outbox);
        var batch = (await new IntakeScene(db).BatchAsync(await new IntakeScene(db).StudentAsync(), reeds: 1)).Batch;
        var known = await KeepAsync(Pictures(db));
        var view = (await letters.ReadAsync(Teacher, batch.Code, Ct))!;
        foreach (var words in new[] { "[picture nobodyknows2: A reed.]", $"[picture {known}]", $"[picture {known}:  ]", $"Look: [picture {known}: A reed.]", $"[Picture {known}: A reed.]" })
        {
            view = Done(await letters.SaveAsync(Teacher, batch.Code, Closing(words), view.Version, Operation(), Ct));
            var gap = Assert.Single(view.Gaps, gap => gap.Kind == GapKind.UnknownPicture);
            Assert.Equal(("picture-closing", "closing"), (gap.Key, gap.Part));
        }

        Assert.IsType<Outcome<LetterView>.Refused>(await letters.WaiveAsync(Teacher, batch.Code, "picture-closing", "never mind", Operation(), Ct));
        view = await WaivedAsync(letters, batch, view);
        Assert.Equal("picture-closing", Assert.Single(Assert.IsType<Outcome<LetterView>.Refused>(await letters.SendAsync(Teacher, batch.Code, view.Mark, Operation(), Ct)).Problems).Field);

        view = Done(await letters.SaveAsync(Teacher, batch.Code, Closing($"[picture {known}: A reed.]"), view.Version, Operation(), Ct));
        Assert.Empty(view.Gaps);
    }

    [Theory, OnBothEngines]
    public async Task A_note_wants_to_be_told_what_its_picture_shows_and_takes_none_that_there_isnt(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var notes = new OwnNoteBook(db, TimeProvider.System);
        var refused = await notes.BeginAsync(Teacher, Corners with { Picture = "nobodyknows2" }, Operation(), Ct);

        Assert.Equal(["PictureWords", "Picture"], Assert.IsType<Outcome<OwnNoteView>.Refused>(refused).Problems.Select(problem => problem.Field));
        Assert.Empty(await notes.AllAsync(Teacher, Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_row_of_a_picture_never_changes(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        await KeepAsync(Pictures(db));
        await using var context = db.CreateDbContext();

        await Assert.ThrowsAnyAsync<Exception>(() => context.Set<NotePicture>().ExecuteUpdateAsync(row => row.SetProperty(picture => picture.Bytes, 1), Ct));
        Assert.NotEqual(1, (await context.Set<NotePicture>().AsNoTracking().SingleAsync(Ct)).Bytes);
    }

    [Theory, OnBothEngines]
    public async Task Once_a_batch_is_erased_its_letters_pictures_go_and_those_of_notes_stay(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var letters = new LetterBook(db, TimeProvider.System, db.Outbox);
        var student = await new IntakeScene(db).StudentAsync();
        var batch = (await new IntakeScene(db).BatchAsync(student, reeds: 1)).Batch;
        var (own, shared) = (await KeepAsync(Pictures(db)), await KeepAsync(Pictures(db)));
        Done(await new OwnNoteBook(db, TimeProvider.System).BeginAsync(Teacher, Corners with { Picture = shared, PictureWords = "A reed." }, Operation(), Ct));
        var view = (await letters.ReadAsync(Teacher, batch.Code, Ct))!;
        Done(await letters.SaveAsync(Teacher, batch.Code, Closing($"[picture {own}: One.]\n\n[picture {shared}: Two.]"), view.Version, Operation(), Ct));
        await using (var before = db.CreateDbContext())
        {
            Assert.Equal(2, await before.Set<PictureUse>().CountAsync(Ct));
            await before.Set<Batch>().Where(row => row.Id == batch.Id).ExecuteDeleteAsync(Ct);
            Assert.Equal(0, await before.Set<PictureUse>().CountAsync(Ct));
        }

        var time = new FakeTimeProvider(TimeProvider.System.GetUtcNow().AddDays(2));
        await new MediaCaretaker(db, Folder(db), time, NullLogger<MediaCaretaker>.Instance).SweepAsync(Ct);
        Assert.Null(await Pictures(db).OpenAsync(Teacher, own, Ct));
        Assert.NotNull(await Pictures(db).OpenAsync(Teacher, shared, Ct));
        Assert.Equal(1, Lying(db));
    }

    private static MediaFolder Folder(TestDatabase db) => db.Services.GetRequiredService<MediaFolder>();

    private static NotePictureBook Pictures(TestDatabase db) => new(db, Folder(db), TimeProvider.System);

    private static int Lying(TestDatabase db) => Directory.Exists(Folder(db).Path) ? Directory.EnumerateFiles(Folder(db).Path, "*", SearchOption.AllDirectories).Count() : 0;

    private static async Task<string> KeepAsync(NotePictureBook pictures) => Done(await pictures.KeepAsync(Teacher, PictureFiles.Png(), Operation(), Ct)).Key;

    private static Dictionary<string, string> Closing(string text) => new() { ["closing"] = text };

    private static async Task<LetterView> WaivedAsync(LetterBook letters, Batch batch, LetterView view)
    {
        foreach (var gap in view.Gaps.Where(gap => !gap.IsInTheWords))
        {
            view = Done(await letters.WaiveAsync(Teacher, batch.Code, gap.Key, "next time", Operation(), Ct));
        }

        return view;
    }

    private static async Task SendAsync(LetterBook letters, Batch batch, LetterView view)
    {
        view = await WaivedAsync(letters, batch, view);
        Done(await letters.SendAsync(Teacher, batch.Code, view.Mark, Operation(), Ct));
    }
}
