using System.Net;
using System.Text.RegularExpressions;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Data.Guardians;
using ReedClinic.Data.Intake;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Guardians;

/// <summary>What a student and their guardian are told once consent was taken back.</summary>
public sealed partial class AfterWithdrawalTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private const string DontPost = "lease don’t post these reeds for now";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_front_page_and_the_batch_say_the_same_not_to_post_and_what_can_be_done()
    {
        var scene = await PausedAsync("Runa Vale");
        string[] pages = ["/", $"/batches/{scene.Batch.Code}", $"/batches/{scene.Batch.Code}?sent=yes"];
        foreach (var path in pages)
        {
            var page = await TextAsync(scene.Student, path);
            Assert.Contains("Your guardian has taken their consent back.", page, StringComparison.Ordinal);
            Assert.Contains(DontPost, page, StringComparison.Ordinal);
            Assert.Contains("They can agree again at any time", page, StringComparison.Ordinal);
            Assert.DoesNotContain("and post them", page, StringComparison.Ordinal);
            Assert.DoesNotContain("Print the slip", page, StringComparison.Ordinal);
            Assert.DoesNotContain("Write this code on the parcel", page, StringComparison.Ordinal);
        }

        Assert.Contains("don’t post these reeds for now", await TextAsync(scene.Student, $"/batches/{scene.Batch.Code}/slip"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_front_page_says_once_why_nothing_can_be_sent()
    {
        var scene = await PausedAsync("Sunniva Vale");

        var page = await TextAsync(scene.Student, "/");

        Assert.Single(Regex.Matches(page, "consent back"));
        Assert.Single(Regex.Matches(page, "agree again at any time"));
        Assert.Contains("If they are in the post already", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Reeds_that_came_home_without_a_letter_name_none()
    {
        var scene = await PausedAsync("Signe Vale");
        await using (var scope = host.Services.CreateAsyncScope())
        {
            var teacher = new Actor(new AccountId(Parcel.NewOperation().Value), null, IsTeacher: true, IsOwner: false);
            var desk = scope.ServiceProvider.GetRequiredService<DeskBook>();
            Assert.IsType<Outcome<BatchView>.Done>(await desk.MoveOnAsync(teacher, scene.Batch.Id, Stage.OnItsWayHome, Parcel.NewOperation(), Ct));
        }

        foreach (var path in new[] { "/", $"/batches/{scene.Batch.Code}" })
        {
            var page = await TextAsync(scene.Student, path);
            Assert.Contains("They come home without a letter.", page, StringComparison.Ordinal);
            Assert.DoesNotContain("Read your letter", page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task The_intake_says_that_nothing_can_be_sent_and_that_what_was_saved_is_kept()
    {
        var scene = await PausedAsync("Tove Vale");
        foreach (var path in new[] { "/", "/intake", scene.LookOver })
        {
            var page = await TextAsync(scene.Student, path);
            Assert.Contains("Until they agree again nothing can be written or sent here.", page, StringComparison.Ordinal);
            Assert.Contains("What was saved before is kept for 180 days", page, StringComparison.Ordinal);
            Assert.DoesNotContain("saved as you type", page, StringComparison.Ordinal);
            Assert.DoesNotContain("Continue where you stopped", page, StringComparison.Ordinal);
            Assert.DoesNotContain("value=\"send\"", page, StringComparison.Ordinal);
            Assert.DoesNotContain(">Change<", page, StringComparison.Ordinal);
        }

        Assert.Contains("violet thread", await TextAsync(scene.Student, scene.LookOver), StringComparison.Ordinal);
        Assert.Equal(scene.LookOver, (await scene.Student.See(scene.LookOver.Replace("look-over", "country", StringComparison.Ordinal))).Location);
    }

    [Fact]
    public async Task What_is_typed_on_a_page_that_was_open_before_is_told_not_to_be_kept()
    {
        var scene = await PausedAsync("Ulva Vale");
        var other = await host.Student("Notpaused");
        var intake = await IntakeWalk.Begin(other);
        var form = await Form.At(other, $"{intake.Draft}/country");
        await using (var scope = host.Services.CreateAsyncScope())
        {
            var db = scope.ServiceProvider.GetRequiredService<ClinicDb>();
            await db.Set<Student>().Where(student => student.Name == "Notpaused").ExecuteUpdateAsync(set => set.SetProperty(student => student.Consent, Consent.Withdrawn), Ct);
        }

        using var sent = await form.Set("Country", "Norway").Set("Go", "on").Post();
        var page = WebUtility.HtmlDecode((await sent.Read()).Page);
        using var quietly = await form.Set("Country", "Norway").PostTo(intake.Draft + "/draft/country");

        Assert.Contains("What you type here now isn’t kept.", page, StringComparison.Ordinal);
        Assert.Contains("Your guardian has taken their consent back", page, StringComparison.Ordinal);
        Assert.DoesNotContain("saved by itself", page, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, quietly.StatusCode);
        Assert.Contains("Your guardian has taken their consent back", Regex.Unescape(await quietly.Content.ReadAsStringAsync(Ct)), StringComparison.Ordinal);
        Assert.NotNull(scene.Student);
    }

    [Fact]
    public async Task A_guardian_is_told_at_the_intake_who_they_are_and_shows_as_one_among_the_people_and_in_the_menu()
    {
        var scene = await PausedAsync("Vibe Vale");

        var page = await TextAsync(scene.Guardian, "/intake");
        Assert.Contains("You are here as a guardian", page, StringComparison.Ordinal);
        Assert.DoesNotContain("You work here", page, StringComparison.Ordinal);
        Assert.Contains("href=\"/wards\"", page, StringComparison.Ordinal);
        Assert.DoesNotContain("href=\"/batches\"", page, StringComparison.Ordinal);

        using var owner = await host.SignedIn(await OwnerAsync());
        var people = await TextAsync(owner, "/people");
        Assert.Matches("Rosa Vale.*?Is here as\"> *guardian", Space().Replace(people, " "));
        Assert.Contains("You work here", await TextAsync(owner, "/intake"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wrong_age_is_put_right_by_a_teacher_also_for_a_student_who_never_sent_anything()
    {
        var (student, _) = await YoungerAsync("Wenche Vale");
        var page = await TextAsync(student, "/guardian");
        Assert.Contains("It is noted here that you are younger than 16.", page, StringComparison.Ordinal);
        Assert.Contains("ask your teacher", page, StringComparison.Ordinal);
        var intake = await IntakeWalk.Begin(student);
        Assert.Contains("If you chose the wrong age", await TextAsync(student, $"{intake.Draft}/look-over"), StringComparison.Ordinal);

        using var teacher = await host.Teacher();
        var found = (await teacher.See("/desk/students?find=wenche")).Page;
        var path = Regex.Match(found, "href=\"(/desk/students/[0-9a-f-]{36})\"").Groups[1].Value;
        using var saved = await Form.Named(teacher, path, (await teacher.See(path)).Page, "correct-age").Set("Age.Answer", nameof(AgeAnswer.OldEnough)).Post();
        Assert.Equal($"{path}?saved=age", saved.Leads());
        Assert.Contains("That is put right.", await TextAsync(teacher, $"{path}?saved=age"), StringComparison.Ordinal);
        Assert.Contains("It is noted here that you are 16 or older.", await TextAsync(student, "/guardian"), StringComparison.Ordinal);
        Assert.Contains("Nobody’s name or address holds that.", await TextAsync(teacher, "/desk/students?find=zzzz"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_guardian_who_has_everything_erased_and_their_student_are_both_told_by_mail()
    {
        await host.OpenStudio();
        var scene = await PausedAsync("Ylva Unmistakable");
        var path = WardPath().Match((await scene.Guardian.See("/wards")).Page).Value.Replace("/wards/", "/privacy/erase?ward=", StringComparison.Ordinal);
        var page = await TextAsync(scene.Guardian, path);
        Assert.Contains("One last mail", page, StringComparison.Ordinal);

        using var erased = await Form.Of(scene.Guardian, path, page).Set("Form.Typed", "erase").Post();
        Assert.Equal("/privacy/erased", erased.Leads());
        Assert.Contains("One last mail says so", await TextAsync(scene.Guardian, "/privacy/erased"), StringComparison.Ordinal);

        var toStudent = await MailedLinks.MailAsync(host.MailFolder, scene.Email, "What Quay Reeds kept about you was deleted", Ct);
        var toGuardian = await MailedLinks.MailAsync(host.MailFolder, scene.GuardianEmail, "What Quay Reeds kept about a student was deleted", Ct);
        Assert.Contains("Ylva", toGuardian, StringComparison.Ordinal);
        Assert.DoesNotContain("Unmistakable", toStudent + toGuardian, StringComparison.Ordinal);
        Assert.DoesNotContain(scene.Batch.Code.ToString(), toStudent + toGuardian, StringComparison.Ordinal);
    }

    // A younger student with a batch and an intake that was begun, whose guardian agreed and took it back; signed in again.
    private async Task<Paused> PausedAsync(string name)
    {
        var (student, account) = await YoungerAsync(name);
        await using var scope = host.Services.CreateAsyncScope();
        var services = scope.ServiceProvider;
        var actor = (await services.GetRequiredService<Data.People.AccountBook>().ActorFor(account, Ct))!;
        var guardian = await GuardianAsync(actor, "Rosa Vale");
        var batch = (await host.Announce(name, "red thread")).Batch;
        var intake = services.GetRequiredService<IntakeBook>();
        var draft = Assert.IsType<Outcome<DraftView>.Done>(await intake.StartAsync(actor, Parcel.NewOperation(), Ct)).Value;
        draft.Form.Reeds[0].HowToRecognise = "violet thread";
        await intake.SaveAsync(actor, draft.Id, draft.Form, draft.Version, Parcel.NewOperation(), Ct);
        var fresh = new Actor(guardian, null, false, false) { IsFresh = true };
        Assert.IsType<Outcome<WardView>.Done>(await services.GetRequiredService<WardBook>().WithdrawAsync(fresh, actor.Student!.Value, Parcel.NewOperation(), Ct));
        Assert.StartsWith("/account/sign-in", (await student.See("/batches")).Location, StringComparison.Ordinal);
        return new Paused(await host.SignedIn(account, SignInWay.Password), await host.SignedIn(guardian, SignInWay.Password), batch, $"/intake/{draft.Id.Value}/look-over")
        {
            Email = (await services.GetRequiredService<Data.People.SignInBook>().ReadAsync(actor, Ct))!.Email,
            GuardianEmail = (await services.GetRequiredService<Data.People.SignInBook>().ReadAsync(fresh, Ct))!.Email,
        };
    }

    private async Task<AccountId> OwnerAsync()
    {
        if (await host.OpenStudio() is { } made && made != default)
        {
            return made;
        }

        await using var scope = host.Services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<ClinicDb>();
        return new AccountId((await db.UserRoles.FirstAsync(held => db.Roles.Any(role => role.Id == held.RoleId && role.Name == nameof(Role.Owner)), Ct)).UserId);
    }

    private async Task<AccountId> GuardianAsync(Actor student, string name)
    {
        await using var scope = host.Services.CreateAsyncScope();
        var book = scope.ServiceProvider.GetRequiredService<GuardianBook>();
        var email = ClinicHost.NewEmail("rosa");
        Assert.IsType<Outcome<GuardianView>.Done>(await book.AskAsync(student, name, email, Parcel.NewOperation(), Ct));
        var secret = (await host.Mailed(email, "/guardian/answer/")).Split('/')[^1];
        return Assert.IsType<Outcome<AccountId>.Done>(await book.AgreeNewAsync(secret, name, ClinicHost.Password, Parcel.NewOperation(), Ct)).Value;
    }

    private async Task<(HttpClient Visitor, AccountId Account)> YoungerAsync(string name)
    {
        await using var scope = host.Services.CreateAsyncScope();
        var made = await scope.ServiceProvider.GetRequiredService<Data.People.AccountRegister>().AdmitAsync(
            new Data.People.NewAccount(name, ClinicHost.NewEmail(name.Split(' ')[0]), ClinicHost.Password) { Age = AgeAnswer.Younger }, Role.Student, Parcel.NewOperation(), Ct);
        var account = Assert.IsType<Outcome<AccountId>.Done>(made).Value;
        return (await host.SignedIn(account, SignInWay.Password), account);
    }

    private static async Task<string> TextAsync(HttpClient who, string path)
    {
        var (status, page, _) = await who.See(path);
        Assert.Equal(HttpStatusCode.OK, status);
        return WebUtility.HtmlDecode(page);
    }

    private sealed record Paused(HttpClient Student, HttpClient Guardian, Batch Batch, string LookOver)
    {
        public string Email { get; init; } = "";

        public string GuardianEmail { get; init; } = "";
    }

    [GeneratedRegex("/wards/[0-9a-f-]{36}")]
    private static partial Regex WardPath();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Space();
}
