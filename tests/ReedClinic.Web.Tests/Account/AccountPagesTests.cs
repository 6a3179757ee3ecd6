using System.Net;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.People;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Account;

public sealed partial class AccountPagesTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    [Fact]
    public async Task A_new_student_is_signed_in_and_can_sign_out_and_in_again()
    {
        var email = ClinicHost.NewEmail("marit");
        using var visitor = host.Visitor();
        var join = await Form.At(visitor, await host.Invite(email));
        using (var made = await join.Set("Form.Name", "Marit").Set("Form.Age", "OldEnough").Set("Form.Password", ClinicHost.Password).Post())
        {
            Assert.Equal(HttpStatusCode.Found, made.StatusCode);
        }

        var home = (await visitor.See("/")).Page;
        Assert.Contains("/account/sign-out", home, StringComparison.Ordinal);
        using (await Form.Of(visitor, "/", home, "/account/sign-out").Post())
        {
            Assert.DoesNotContain("/account/sign-out", (await visitor.See("/")).Page, StringComparison.Ordinal);
        }

        var signIn = await Form.At(visitor, "/account/sign-in?back=%2Fbatches");
        using var back = await signIn.Set("Form.Email", email).Set("Form.Password", ClinicHost.Password).Post();
        Assert.Equal("/batches", back.Leads());
    }

    [Fact]
    public async Task The_page_of_an_account_leads_to_what_is_kept_of_it()
    {
        using var student = await host.Student("Marit");
        using var teacher = await host.Teacher();

        var (own, staff) = ((await student.See("/account")).Page, (await teacher.See("/account")).Page);

        Assert.All(["/privacy\"", "/privacy/export\"", "/privacy/erase\""], path => Assert.Contains($"<a href=\"{path}>", Main(own), StringComparison.Ordinal));
        Assert.Contains("<a href=\"/guardian\">", Main(own), StringComparison.Ordinal);
        Assert.DoesNotContain("<a href=\"/guardian\">", Main(staff), StringComparison.Ordinal);

        static string Main(string page) => page[page.IndexOf("<main", StringComparison.Ordinal)..page.IndexOf("</main>", StringComparison.Ordinal)];
    }

    [Fact]
    public async Task A_name_nobody_has_and_a_wrong_password_get_the_same_words()
    {
        var email = ClinicHost.NewEmail("jorn");
        await host.Admit("Jorn", email);
        using var stranger = host.Visitor();
        var known = await Try(stranger, email, "a password that is wrong");
        var unknown = await Try(stranger, ClinicHost.NewEmail("nobody"), "a password that is wrong");

        Assert.Contains("belong together", known, StringComparison.Ordinal);
        Assert.Equal(known.Replace(email, "", StringComparison.Ordinal), Address().Replace(unknown, ""));
    }

    [Fact]
    public async Task A_name_nobody_has_costs_as_many_hashes_as_a_wrong_password()
    {
        var counter = new CountingHasher();
        await using var counted = host.WithWebHostBuilder(b => b.ConfigureTestServices(s => s.AddSingleton<IPasswordHasher<ClinicAccount>>(counter)));
        var email = ClinicHost.NewEmail("tove");
        using var visitor = counted.CreateClient(new() { BaseAddress = new Uri("https://localhost"), AllowAutoRedirect = false });
        await host.Admit("Tove", email);
        counter.Checked = 0;

        await Try(visitor, email, "wrong wrong wrong wrong");
        var forKnown = counter.Checked;
        counter.Checked = 0;
        await Try(visitor, ClinicHost.NewEmail("nobody"), "wrong wrong wrong wrong");

        Assert.Equal(1, forKnown);
        Assert.Equal(forKnown, counter.Checked);
    }

    [Theory]
    [InlineData("\u0001nobody@harbour.example")]
    [InlineData("no address")]
    public async Task What_can_be_no_address_gets_the_same_words_and_the_same_work(string email)
    {
        var counter = new CountingHasher();
        await using var counted = host.WithWebHostBuilder(b => b.ConfigureTestServices(s => s.AddSingleton<IPasswordHasher<ClinicAccount>>(counter)));
        using var visitor = counted.CreateClient(new() { BaseAddress = new Uri("https://localhost"), AllowAutoRedirect = false });

        Assert.Contains("belong together", await Try(visitor, email, "wrong wrong wrong wrong"), StringComparison.Ordinal);
        Assert.Equal(1, counter.Checked);
    }

    [Theory]
    [InlineData("", "", 0, "Write the e-mail address you sign in with.", "Type your password.")]
    [InlineData(" ", "wrong wrong wrong wrong", 0, "Write the e-mail address you sign in with.", null)]
    [InlineData("nobody@harbour.example", "", 0, "Type your password.", null)]
    public async Task An_empty_field_is_named_beside_itself_and_costs_no_work(string email, string password, int work, string said, string? also)
    {
        var counter = new CountingHasher();
        await using var counted = host.WithWebHostBuilder(b => b.ConfigureTestServices(s => s.AddSingleton<IPasswordHasher<ClinicAccount>>(counter)));
        using var visitor = counted.CreateClient(new() { BaseAddress = new Uri("https://localhost"), AllowAutoRedirect = false });

        var page = await Try(visitor, email, password);

        Assert.Contains(said, page, StringComparison.Ordinal);
        Assert.Contains(also ?? said, page, StringComparison.Ordinal);
        Assert.DoesNotContain("belong together", page, StringComparison.Ordinal);
        Assert.Equal(work, counter.Checked);
    }

    [Fact]
    public async Task After_five_wrong_tries_the_right_password_is_refused_too()
    {
        var email = ClinicHost.NewEmail("runa");
        await host.Admit("Runa", email);
        using var stranger = host.Visitor();
        for (var i = 0; i < 5; i++)
        {
            await Try(stranger, email, "wrong wrong wrong wrong");
        }

        Assert.Contains("belong together", await Try(stranger, email, ClinicHost.Password), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", ClinicHost.Password, "OldEnough", "Form-Name")]
    [InlineData("Ann", "fourteen chars", "OldEnough", "Form-Password")]
    [InlineData("Ann", ClinicHost.Password, "", "Form-Age")]
    public async Task What_cannot_be_taken_is_said_beside_its_field_and_the_rest_stays_typed(string name, string password, string age, string field)
    {
        using var visitor = host.Visitor();
        using var answer = await (await Form.At(visitor, await host.Invite(ClinicHost.NewEmail("ann"))))
            .Set("Form.Name", name).Set("Form.Age", age).Set("Form.Password", password).Post();
        var (status, page, _) = await answer.Read();

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Contains($"id=\"f-{field}-error\"", page, StringComparison.Ordinal);
        Assert.Contains($"value=\"{name}\"", page, StringComparison.Ordinal);
        Assert.DoesNotContain(password, page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_first_owner_opens_the_studio_with_the_announced_code_and_nobody_does_so_twice()
    {
        await using var fresh = new ClinicHost();
        var code = fresh.Services.GetRequiredService<FirstRunCode>().Text;
        using var visitor = fresh.Visitor();
        using (var guessed = await (await FirstRun(visitor)).Set("Form.Code", "0000-0000").Post())
        {
            Assert.Contains("f-Form-Code-error", (await guessed.Read()).Page, StringComparison.Ordinal);
        }

        using (var opened = await (await FirstRun(visitor)).Set("Form.Code", code).Post())
        {
            Assert.Equal("/account/second-step?then=/desk", opened.Leads());
        }

        using var late = fresh.Visitor();
        Assert.Contains("is open already", (await late.See("/first-run")).Page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("sixteen")]
    [InlineData("3")]
    public async Task An_age_that_was_mistyped_on_the_first_run_is_said_beside_it_and_nothing_typed_is_lost(string age)
    {
        await using var fresh = new ClinicHost();
        var code = fresh.Services.GetRequiredService<FirstRunCode>().Text;
        using var visitor = fresh.Visitor();
        using var answer = await (await FirstRun(visitor)).Set("Form.Code", code).Without("Form.SignUpOpen").Set("Form.ConsentAge", age).Post();
        var (status, page, _) = await answer.Read();

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Contains("f-Form-ConsentAge-error", page, StringComparison.Ordinal);
        var again = Form.Of(visitor, "/first-run", page);
        Assert.Equal(
            ("Quayside Reeds", "Ilse", "ilse@harbour.example", code, age), (again["Form.StudioName"], again["Form.Name"], again["Form.Email"], again["Form.Code"], again["Form.ConsentAge"] ?? ""));
        Assert.DoesNotMatch("name=\"Form.SignUpOpen\"[^>]*checked", page);
        using var opened = await again.Set("Form.Password", ClinicHost.Password).Set("Form.ConsentAge", "16").Post();
        Assert.Equal("/account/second-step?then=/desk", opened.Leads());
    }

    private static async Task<Form> FirstRun(HttpClient visitor) => (await Form.At(visitor, "/first-run"))
        .Set("Form.StudioName", "Quayside Reeds").Set("Form.Name", "Ilse").Set("Form.Email", "ilse@harbour.example").Set("Form.Password", ClinicHost.Password);

    private static async Task<string> Try(HttpClient visitor, string email, string password)
    {
        using var answer = await (await Form.At(visitor, "/account/sign-in")).Set("Form.Email", email).Set("Form.Password", password).Post();
        var (status, page, _) = await answer.Read();
        Assert.Equal(HttpStatusCode.OK, status);
        return page[page.IndexOf("<h1", StringComparison.Ordinal)..page.IndexOf("</main>", StringComparison.Ordinal)] is var main
            ? Token().Replace(main, "")
            : "";
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"[^\"]*\"")]
    private static partial Regex Token();

    [GeneratedRegex(@"nobody-\d+@harbour\.example")]
    private static partial Regex Address();

    private sealed class CountingHasher : PasswordHasher<ClinicAccount>
    {
        public int Checked { get; set; }

        public override PasswordVerificationResult VerifyHashedPassword(ClinicAccount user, string hashedPassword, string providedPassword)
        {
            Checked++;
            return base.VerifyHashedPassword(user, hashedPassword, providedPassword);
        }
    }
}
