using System.Net;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Data.People;
using ReedClinic.Domain.People;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Guardians;

/// <summary>A younger student, the mail to a guardian, and what the guardian can do: Regulation (EU) 2016/679, Article 8.</summary>
public sealed class GuardianPagesTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task How_long_records_are_kept_and_when_they_can_be_erased_is_said_the_same_wherever_it_is_said()
    {
        var student = await host.YoungerAsync("Tuva Vale");
        var guardian = host.Visitor();
        var question = await guardian.TextAsync(await host.AskedAsync(student, ClinicHost.NewEmail("rosa")));
        var privacy = await student.TextAsync("/privacy");

        Assert.Matches("years? after they last used the service, or until you or they have it erased", question);
        Assert.Matches("years? after they last used the service: a sign-in", privacy);
        Assert.All([question, privacy], page =>
        {
            Assert.DoesNotContain("sign of life", page, StringComparison.Ordinal);
            Assert.Matches("[Hh]ave everything erased[.;] [Ww]hile reeds are at the studio that waits until they are on their way home", page);
        });
        Assert.DoesNotMatch("erased,? (and .*)?at any time", question);
    }

    [Fact]
    public async Task A_younger_student_is_led_to_their_guardian_and_sends_when_the_guardian_agreed()
    {
        var student = await YoungerAsync("Pia Kestrel");
        var intake = await IntakeWalk.Begin(student);
        await intake.Fill(1);
        var (_, before, _) = await student.See($"{intake.Draft}/look-over");
        Assert.Contains("href=\"/guardian\"", before, StringComparison.Ordinal);
        using var refused = await (await Form.At(student, $"{intake.Draft}/look-over")).Post();
        Assert.Equal(HttpStatusCode.OK, refused.StatusCode);

        var secret = await AskAsync(student, "rosa-look-over@harbour.example");
        Assert.Contains("rosa-look-over@harbour.example", (await student.See("/guardian")).Page, StringComparison.Ordinal);
        var guardian = host.Visitor();
        var (_, question, _) = await guardian.See($"/guardian/answer/{secret}");
        Assert.Contains("Pia", question, StringComparison.Ordinal);
        Assert.DoesNotContain("Kestrel", question, StringComparison.Ordinal);
        await AgreeAsync(guardian, secret);

        var code = await intake.Send();
        Assert.Contains(code, (await guardian.See("/wards")).Location is null ? (await guardian.See(await WardAsync(guardian))).Page : "", StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await guardian.See($"/batches/{code}")).Status);
    }

    [Fact]
    public async Task Looking_at_the_link_changes_nothing_and_a_used_one_is_over()
    {
        var student = await YoungerAsync("Juno Vale");
        var secret = await AskAsync(student, "rosa-twice@harbour.example");
        for (var i = 0; i < 3; i++)
        {
            Assert.Contains("Juno", (await host.Visitor().See($"/guardian/answer/{secret}")).Page, StringComparison.Ordinal);
        }

        await AgreeAsync(host.Visitor(), secret);
        Assert.DoesNotContain("Juno", (await host.Visitor().See($"/guardian/answer/{secret}")).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_is_signed_in_is_named_before_they_agree_and_a_student_is_led_out_and_back()
    {
        var student = await YoungerAsync("Nora Vale");
        var secret = await AskAsync(student, "rosa-shared@harbour.example");
        var address = $"/guardian/answer/{secret}";
        using var mother = await host.Student("Mothervale");

        var (_, shared, _) = await student.See(address);
        var (_, hers, _) = await mother.See(address);
        using var left = await Form.Of(student, address, shared[shared.IndexOf("<main", StringComparison.Ordinal)..], "/account/sign-out").Post();

        Assert.Contains("is signed in here, who sends reeds", shared, StringComparison.Ordinal);
        Assert.DoesNotContain("I agree</button>", shared, StringComparison.Ordinal);
        Assert.Contains("You are signed in as", hers, StringComparison.Ordinal);
        Assert.All(["{0}", "{1}"], unsaid => Assert.DoesNotContain(unsaid, shared + hers, StringComparison.Ordinal));
        Assert.Contains("The question went to", hers, StringComparison.Ordinal);
        Assert.Contains("I agree</button>", hers, StringComparison.Ordinal);
        Assert.Equal(address, left.Leads());
        Assert.Contains("rosa-shared@harbour.example", (await student.See(address)).Page, StringComparison.Ordinal);
        Assert.DoesNotContain("is signed in here", (await student.See(address)).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_guardian_says_no_without_a_sign_in_and_may_be_asked_again()
    {
        var student = await YoungerAsync("Oda Vale");
        var question = $"/guardian/answer/{await AskAsync(student, "rosa-no@harbour.example")}";
        Assert.DoesNotContain("value=\"decline\"", (await student.See(question)).Page, StringComparison.Ordinal);
        var rosa = host.Visitor();
        var no = Form.Named(rosa, question, (await rosa.See(question)).Page, "decline");
        for (var sent = 0; sent < 2; sent++)
        {
            using var answer = await no.Post();
            Assert.Contains("Your no is noted", (await answer.Read()).Page, StringComparison.Ordinal);
        }

        Assert.Contains("This link isn’t good any more", await rosa.TextAsync(question), StringComparison.Ordinal);
        Assert.StartsWith("/account/sign-in", (await rosa.See("/wards")).Location, StringComparison.Ordinal);
        Assert.Contains("The answer was no, for now", await student.TextAsync("/guardian"), StringComparison.Ordinal);
        Assert.Contains("<bdi>Rosa</bdi> has said no.", await student.TextAsync("/guardian"), StringComparison.Ordinal);
        Assert.Contains("Your guardian has said no for now", await student.TextAsync("/"), StringComparison.Ordinal);
        var teacher = await host.Teacher();
        var found = System.Text.RegularExpressions.Regex.Match((await teacher.See("/desk/students?find=oda")).Page, "/desk/students/[0-9a-f-]{36}").Value;
        Assert.Contains("the guardian who was asked said no", await teacher.TextAsync(found), StringComparison.Ordinal);

        var (_, asks, _) = await student.See("/guardian");
        Assert.DoesNotContain("rosa-no@harbour.example", asks, StringComparison.Ordinal); // isn't written to again so soon
        using (var soon = await Form.Named(student, "/guardian", asks, "guardian").Set("Form.Name", "Rosa").Set("Form.Email", "rosa-no@harbour.example").Post())
        {
            Assert.Contains("said no in the last 24 hours", System.Net.WebUtility.HtmlDecode((await soon.Read()).Page), StringComparison.Ordinal);
        }

        await AgreeAsync(host.Visitor(), await AskAsync(student, "rosa-after-all@harbour.example"));
        Assert.Contains("has agreed", await student.TextAsync("/guardian"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Whoever_answers_by_a_link_that_was_used_meanwhile_is_told_that_it_is_over()
    {
        var secret = await AskAsync(await YoungerAsync("Ada Vale"), "rosa-late@harbour.example");
        var late = (await Form.At(host.Visitor(), $"/guardian/answer/{secret}")).Set("Form.Name", "Rosa").Set("Form.Password", ClinicHost.Password);
        await AgreeAsync(host.Visitor(), secret);
        await using (var scope = host.Services.CreateAsyncScope())
        {
            // Its address is nobody's any more, so that the link alone is what is refused.
            await scope.ServiceProvider.GetRequiredService<ClinicDb>().Users.Where(user => user.Email == "rosa-late@harbour.example")
                .ExecuteUpdateAsync(row => row.SetProperty(user => user.NormalizedEmail, "ROSA@ELSEWHERE.EXAMPLE").SetProperty(user => user.NormalizedUserName, "ROSA@ELSEWHERE.EXAMPLE"), Ct);
        }

        using var answer = await late.Post();
        var (status, page, _) = await answer.Read();

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Contains("href=\"/wards\"", page, StringComparison.Ordinal);
        Assert.DoesNotContain("name=\"Form.Password\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Consent_taken_back_stops_the_student_and_the_bench_and_opens_the_way_home()
    {
        var student = await YoungerAsync("Milo Vale");
        var guardian = host.Visitor();
        await AgreeAsync(guardian, await AskAsync(student, "rosa-back@harbour.example"));
        var batch = (await host.Announce("Milo Vale", "red thread")).Batch;
        var teacher = await host.Teacher();
        var ward = await WardAsync(guardian);

        using var withdrawn = await Form.Named(guardian, $"{ward}/take-back", (await guardian.See($"{ward}/take-back")).Page, "consent").Post();
        Assert.Equal($"{ward}?done=withdrawn", withdrawn.Leads());

        Assert.StartsWith("/account/sign-in", (await student.See("/batches")).Location, StringComparison.Ordinal);
        var (_, page, _) = await teacher.See($"/batches/{batch.Code}");
        Assert.Contains("the reeds go home unworked", page, StringComparison.Ordinal);
        Assert.Contains("the reeds go home unworked", (await teacher.See($"/bench/{batch.Reeds[0].Id.Value}")).Page, StringComparison.Ordinal);
        Assert.DoesNotContain("id=\"entry-form\"", (await teacher.See($"/bench/{batch.Reeds[0].Id.Value}")).Page, StringComparison.Ordinal);
        using var home = await Form.Named(teacher, $"/batches/{batch.Code}", page, "onward").Post();
        Assert.Equal($"/batches/{batch.Code}", home.Leads());
        Assert.Equal(HttpStatusCode.NotFound, (await guardian.See($"/batches/{batch.Code}")).Status);
        var (_, taken, _) = await guardian.See(ward);
        Assert.Contains($"{batch.Code}", taken, StringComparison.Ordinal);
        Assert.DoesNotContain($"href=\"/batches/{batch.Code}\"", taken, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_slip_names_nobody_and_a_letter_a_younger_student_by_the_first_name()
    {
        var student = await YoungerAsync("Tilda Unmistakable");
        await AgreeAsync(host.Visitor(), await AskAsync(student, "rosa-slip@harbour.example"));
        var batch = (await host.Announce("Tilda Unmistakable", "blue thread")).Batch;
        var teacher = await host.Teacher();

        Assert.DoesNotContain("Tilda", (await student.See($"/batches/{batch.Code}/slip")).Page, StringComparison.Ordinal);
        var (_, letter, _) = await teacher.See($"/letters/{batch.Code}");
        Assert.Contains("Tilda", letter, StringComparison.Ordinal);
        Assert.DoesNotContain("Unmistakable", letter, StringComparison.Ordinal);
    }

    private async Task<HttpClient> YoungerAsync(string name)
    {
        // By the Book, so that this stands whatever way in the house has.
        var email = ClinicHost.NewEmail(name.Split(' ')[0]);
        await using (var scope = host.Services.CreateAsyncScope())
        {
            await scope.ServiceProvider.GetRequiredService<AccountRegister>().AdmitAsync(
                new NewAccount(name, email, ClinicHost.Password) { Age = AgeAnswer.Younger }, Role.Student, Parcel.NewOperation(), Ct);
        }

        var visitor = host.Visitor();
        using var answer = await (await Form.At(visitor, "/account/sign-in")).Set("Form.Email", email).Set("Form.Password", ClinicHost.Password).Post();
        Assert.Equal("/", answer.Leads());
        return visitor;
    }

    private async Task<string> AskAsync(HttpClient student, string email)
    {
        using var asked = await (await Form.At(student, "/guardian")).Set("Form.Name", "Rosa").Set("Form.Email", email).Post();
        Assert.Equal("/guardian", asked.Leads());
        return (await host.Mailed(email, "/guardian/answer/")).Split('/')[^1];
    }

    private static async Task AgreeAsync(HttpClient guardian, string secret)
    {
        using var agreed = await (await Form.At(guardian, $"/guardian/answer/{secret}")).Set("Form.Name", "Rosa").Set("Form.Password", ClinicHost.Password).Post();
        Assert.Equal("/wards", agreed.Leads());
    }

    private static async Task<string> WardAsync(HttpClient guardian)
    {
        var (_, page, _) = await guardian.See("/wards");
        var at = page.IndexOf("/wards/", StringComparison.Ordinal);
        return page.Substring(at, "/wards/".Length + 36);
    }
}
