using System.Net;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Arrival;

public sealed class ArrivalPagesTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    [Fact]
    public async Task A_code_typed_in_small_letters_with_spaces_opens_the_batch()
    {
        using var student = await host.Student("Wietske");
        var parcel = await host.Announce("Wietske", "green thread");
        using var teacher = await host.Teacher();

        var typed = Uri.EscapeDataString(" " + parcel.Batch.Code.Value.ToLowerInvariant().Insert(2, " "));
        var (_, _, leads) = await teacher.See("/arrival?code=" + typed);

        Assert.Equal($"/batches/{parcel.Batch.Code}/arrival", leads);
    }

    [Fact]
    public async Task A_mistyped_code_says_which_character_is_wrong_beside_the_field_and_keeps_what_was_typed()
    {
        using var student = await host.Student("Jurre");
        var parcel = await host.Announce("Jurre", "blue thread");
        using var teacher = await host.Teacher();
        var meant = parcel.Batch.Code.Value;
        var wrong = meant[..2] + (meant[2] == 'K' ? 'L' : 'K') + meant[3..];

        var (status, page, _) = await teacher.See("/arrival?code=" + wrong);

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Contains("The 3rd character is", page, StringComparison.Ordinal);
        Assert.Contains($"value=\"{wrong}\"", page, StringComparison.Ordinal);
        Assert.Contains($"/batches/{parcel.Batch.Code}/arrival", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Saving_an_arrival_of_which_nothing_was_noted_says_so()
    {
        using var student = await host.Student("Tjalda");
        var parcel = await host.Announce("Tjalda", "red thread");
        using var teacher = await host.Teacher();
        var form = await Form.At(teacher, $"/batches/{parcel.Batch.Code}/arrival");

        using var nothing = await form.Post();
        using var half = await form.Set("Form.Reeds[1].Damage", "chipped").Post();

        Assert.Contains("Nothing was noted yet.", (await nothing.Read()).Page, StringComparison.Ordinal);
        Assert.Contains("Reed 1: say whether it is in the parcel", (await half.Read()).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ticking_reeds_off_keeps_marks_and_tells_what_is_missing_and_damaged()
    {
        using var student = await host.Student("Tjitske");
        var parcel = await host.Announce("Tjitske", "red thread", "yellow thread");
        using var teacher = await host.Teacher();
        var path = $"/batches/{parcel.Batch.Code}/arrival";

        var form = await Form.At(teacher, path);
        form.Set("Form.Reeds[1].Presence", "Here").Set("Form.Reeds[1].Fitness", "Fit")
            .Set("Form.Reeds[1].UpperMark", "pencil dot").Set("Form.Reeds[1].Damage", "left corner chipped")
            .Set("Form.Reeds[1].Winding", "Right").Set("Form.Reeds[1].Overlap", "UpperToTheLeft").Set("Form.Reeds[1].OverlapAgrees", "False")
            .Set("Form.Reeds[2].Presence", "Missing");
        using var answer = await form.Post();

        Assert.Equal(path + "?saved=true", answer.Leads());
        var (_, page, _) = await teacher.See(path + "?saved=true");
        Assert.Contains("Reed 1 arrived damaged: left corner chipped", page, StringComparison.Ordinal);
        Assert.Contains("Reed 2 (yellow thread) was not in the parcel", page, StringComparison.Ordinal);
        var again = Form.Of(teacher, path, page);
        Assert.Equal("pencil dot", again["Form.Reeds[1].UpperMark"]);
        Assert.Equal("UpperToTheLeft", again["Form.Reeds[1].Overlap"]);
        Assert.Equal("False", again["Form.Reeds[1].OverlapAgrees"]);
    }

    [Fact]
    public async Task A_reed_that_is_here_must_be_said_to_be_fit_or_not_and_nothing_typed_is_lost()
    {
        using var student = await host.Student("Oene");
        var parcel = await host.Announce("Oene", "black thread");
        using var teacher = await host.Teacher();

        var form = await Form.At(teacher, $"/batches/{parcel.Batch.Code}/arrival");
        form.Set("Form.Reeds[1].Presence", "Here").Set("Form.Reeds[1].UpperMark", "nick in the cork");
        using var answer = await form.Post();
        var (status, page, _) = await answer.Read();

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Contains("id=\"f-Form-Reeds-1-Fitness-error\"", page, StringComparison.Ordinal);
        Assert.Contains("nick in the cork", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_noted_of_a_reed_is_refused_until_it_is_said_to_be_here()
    {
        using var student = await host.Student("Gjalt");
        var parcel = await host.Announce("Gjalt", "brown thread");
        using var teacher = await host.Teacher();

        var form = await Form.At(teacher, $"/batches/{parcel.Batch.Code}/arrival");
        form.Set("Form.Reeds[1].Damage", "crack in the window").Set("Form.Reeds[1].Fitness", "Fit");
        using var answer = await form.Post();
        var (status, page, _) = await answer.Read();

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Contains("id=\"f-Form-Reeds-1-Presence-error\"", page, StringComparison.Ordinal);
        Assert.Contains("crack in the window", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_unannounced_reed_gets_the_next_number_and_sending_it_twice_adds_one()
    {
        using var student = await host.Student("Froukje");
        var parcel = await host.Announce("Froukje", "white thread");
        using var teacher = await host.Teacher();
        var path = $"/batches/{parcel.Batch.Code}/arrival";
        var form = await Form.At(teacher, path);
        form.Set("Form.Extra.HowToRecognise", "no thread colour, cork with a crack").Set("Form.Step", "extra");
        using var once = await form.Post();
        using var twice = await form.Post();

        var (_, page, _) = await teacher.See(path);
        Assert.Contains("Reed 2 (no thread colour, cork with a crack) was not announced", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Reed 3", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Adding_an_unannounced_reed_keeps_what_was_ticked_and_typed_of_the_others_ready_to_be_saved()
    {
        using var student = await host.Student("Wobbe");
        var parcel = await host.Announce("Wobbe", "violet thread");
        using var teacher = await host.Teacher();
        var path = $"/batches/{parcel.Batch.Code}/arrival";

        var form = await Form.At(teacher, path);
        form.Set("Form.Reeds[1].Presence", "Here").Set("Form.Reeds[1].UpperMark", "pencil dot").Set("Form.Note", "box crushed")
            .Set("Form.Extra.HowToRecognise", "bare cork").Set("Form.Step", "extra");
        using var added = await form.Post();
        var (status, page, _) = await added.Read();

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Contains("Reed 2 is in the batch.", page, StringComparison.Ordinal);
        Assert.DoesNotContain("The arrival is saved.", page, StringComparison.Ordinal);
        var again = Form.Of(teacher, path, page);
        Assert.Equal("Here", again["Form.Reeds[1].Presence"]);
        Assert.Equal("pencil dot", again["Form.Reeds[1].UpperMark"]);
        Assert.Equal("box crushed", again["Form.Note"]);
        Assert.Equal("", again["Form.Extra.HowToRecognise"]);
        Assert.NotEqual(form["Form.Extra.Operation"], again["Form.Extra.Operation"]);
        using var saved = await again.Set("Form.Reeds[1].Fitness", "Fit").Set("Form.Reeds[2].Fitness", "Fit").Post();
        Assert.Equal(path + "?saved=true", saved.Leads());
        Assert.Equal("pencil dot", (await Form.At(teacher, path))["Form.Reeds[1].UpperMark"]);
    }

    [Fact]
    public async Task Saving_adds_the_unannounced_reed_that_was_described_and_one_without_words_keeps_everything()
    {
        using var student = await host.Student("Ysbrand");
        var parcel = await host.Announce("Ysbrand", "pink thread");
        using var teacher = await host.Teacher();
        var path = $"/batches/{parcel.Batch.Code}/arrival";

        var form = await Form.At(teacher, path);
        form.Set("Form.Reeds[1].Presence", "Here").Set("Form.Reeds[1].Fitness", "Fit").Set("Form.Reeds[1].UpperMark", "nick").Set("Form.Step", "extra");
        using var refused = await form.Post();
        var page = (await refused.Read()).Page;
        Assert.Contains("id=\"f-Form-Extra-HowToRecognise-error\"", page, StringComparison.Ordinal);
        using var saved = await Form.Of(teacher, path, page).Set("Form.Extra.HowToRecognise", "no cork").Post();

        Assert.Equal(path + "?saved=true", saved.Leads());
        var stands = await teacher.See(path);
        Assert.Contains("Reed 2 (no cork) was not announced", stands.Page, StringComparison.Ordinal);
        Assert.Equal("nick", Form.Of(teacher, path, stands.Page)["Form.Reeds[1].UpperMark"]);
    }

    [Fact]
    public async Task A_second_teacher_who_saves_over_the_first_is_shown_both()
    {
        using var student = await host.Student("Sjoerd");
        var parcel = await host.Announce("Sjoerd", "grey thread");
        using var teacher = await host.Teacher("Ilse");
        using var assistant = await host.Teacher("Bram");
        var path = $"/batches/{parcel.Batch.Code}/arrival";
        var first = (await Form.At(teacher, path)).Set("Form.Reeds[1].Presence", "Missing");
        var second = (await Form.At(assistant, path)).Set("Form.Reeds[1].Presence", "Here").Set("Form.Reeds[1].Fitness", "Fit").Set("Form.Note", "lay under the paper");

        using var saved = await first.Post();
        using var clashed = await second.Post();
        var (_, page, _) = await clashed.Read();

        Assert.Contains("Reed 1: missing", page, StringComparison.Ordinal);
        Assert.Contains("lay under the paper", page, StringComparison.Ordinal);
        using var insisted = await Form.Of(assistant, path, page).Post();
        Assert.Equal(path + "?saved=true", insisted.Leads());
    }

    [Fact]
    public async Task A_student_is_kept_out_and_a_batch_that_nobody_sent_is_nowhere()
    {
        using var student = await host.Student("Nynke");
        var parcel = await host.Announce("Nynke", "orange thread");
        var (_, _, leads) = await student.See($"/batches/{parcel.Batch.Code}/arrival");
        Assert.StartsWith("/account/not-yours", leads, StringComparison.Ordinal);

        using var teacher = await host.Teacher();
        Assert.Equal(HttpStatusCode.NotFound, (await teacher.See("/batches/222-2222/arrival")).Status);
    }

    [Fact]
    public async Task An_unannounced_reed_that_was_added_by_mistake_is_removed_and_what_was_ticked_of_the_others_stands()
    {
        using var student = await host.Student("Sjoukje");
        var parcel = await host.Announce("Sjoukje", "amber thread");
        using var teacher = await host.Teacher();
        var path = $"/batches/{parcel.Batch.Code}/arrival";
        using var added = await (await Form.At(teacher, path)).Set("Form.Extra.HowToRecognise", "bare cork").Set("Form.Step", "extra").Post();
        var (_, shown, _) = await added.Read();
        Assert.Contains("Reed 2 (bare cork) was added by mistake", shown, StringComparison.Ordinal);

        var form = Form.Of(teacher, path, shown);
        form.Set("Form.Reeds[1].Presence", "Here").Set("Form.Reeds[1].Fitness", "Fit").Set("Form.Reeds[1].UpperMark", "pencil dot").Set("Form.Note", "box crushed")
            .Set("Form.Extra.HowToRecognise", "still being typed").Set("Form.Step", PressedTwiceTests.Removing(shown, 2));
        using var removed = await form.Post();
        var (status, page, _) = await removed.Read();

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Contains("Reed 2 isn’t in the batch any more.", WebUtility.HtmlDecode(page), StringComparison.Ordinal);
        Assert.DoesNotContain("bare cork", page, StringComparison.Ordinal);
        var again = Form.Of(teacher, path, page);
        Assert.Equal(("pencil dot", "still being typed"), (again["Form.Reeds[1].UpperMark"], again["Form.Extra.HowToRecognise"]));
        using var saved = await again.Set("Form.Extra.HowToRecognise", "").Post();
        Assert.Equal(path + "?saved=true", saved.Leads());
    }

    [Fact]
    public async Task A_saved_arrival_names_the_reeds_of_which_nobody_said_yet_whether_they_are_there()
    {
        using var student = await host.Student("Hinke");
        var parcel = await host.Announce("Hinke", "amber thread", "grey thread");
        using var teacher = await host.Teacher();
        var path = $"/batches/{parcel.Batch.Code}/arrival";
        using var half = await (await Form.At(teacher, path)).Set("Form.Reeds[1].Presence", "Here").Set("Form.Reeds[1].Fitness", "Fit").Post();
        var (_, open, _) = await teacher.See(half.Leads()!);
        using var whole = await Form.Of(teacher, path, open).Set("Form.Reeds[2].Presence", "Missing").Post();
        var (_, all, _) = await teacher.See(whole.Leads()!);

        Assert.Contains("Saved as far as you said it.", open, StringComparison.Ordinal);
        Assert.Contains($"<a href=\"{path}#reed-2\">Reed 2</a>", open, StringComparison.Ordinal);
        Assert.DoesNotContain("#reed-1\"", open, StringComparison.Ordinal);
        Assert.Contains("The arrival is saved.", all, StringComparison.Ordinal);
        Assert.DoesNotContain("#reed-2\"", all, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_unannounced_reed_with_a_photograph_says_beside_its_own_button_why_it_stays()
    {
        using var student = await host.Student("Ytsje");
        var parcel = await host.Announce("Ytsje", "amber thread");
        using var teacher = await host.Teacher();
        var path = $"/batches/{parcel.Batch.Code}/arrival";
        using var added = await (await Form.At(teacher, path)).Set("Form.Extra.HowToRecognise", "bare cork").Set("Form.Step", "extra").Post();
        var (_, shown, _) = await added.Read();
        var form = Form.Of(teacher, path, shown);
        await using (var scope = host.Services.CreateAsyncScope())
        {
            var extra = await scope.ServiceProvider.GetRequiredService<ClinicDb>().Set<Batch>().Where(batch => batch.Id == parcel.Batch.Id)
                .SelectMany(batch => batch.Reeds).SingleAsync(reed => reed.Number == 2, TestContext.Current.CancellationToken);
            await RecordingParcel.KeepAsync(host, extra.Id, RecordingKind.ArrivalPhoto, new AccountId(Parcel.NewOperation().Value), isFromStudio: true);
        }

        using var refused = await form.Set("Form.Step", PressedTwiceTests.Removing(shown, 2)).Post();
        var page = WebUtility.HtmlDecode((await refused.Read()).Page);

        var own = page[page.IndexOf($"id=\"f-Form-{PressedTwiceTests.Removing(shown, 2)}-Remove\" open", StringComparison.Ordinal)..];
        Assert.StartsWith("A sound or a photograph of this reed is kept.", own[(own.IndexOf("class=\"error\">", StringComparison.Ordinal) + 14)..], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_note_on_the_parcel_is_ticked_to_be_told_in_the_letter_or_stays_with_the_studio()
    {
        using var student = await host.Student("Baukje");
        var parcel = await host.Announce("Baukje", "grey thread");
        using var teacher = await host.Teacher();
        var path = $"/batches/{parcel.Batch.Code}/arrival";
        using var kept = await (await Form.At(teacher, path)).Set("Form.Note", "smells of smoke").Post();
        Assert.DoesNotContain("smells of smoke", (await teacher.See($"/letters/{parcel.Batch.Code}")).Page, StringComparison.OrdinalIgnoreCase);

        using var told = await (await Form.At(teacher, path)).Set("Form.NoteInLetter", "true").Post();
        Assert.Equal(path + "?saved=true", told.Leads());
        Assert.Contains("Smells of smoke.", (await teacher.See($"/letters/{parcel.Batch.Code}")).Page, StringComparison.Ordinal);
    }
}
