using System.Net;
using System.Text.RegularExpressions;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.People;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Account;

/// <summary>OWASP ASVS 5.0: 6.3.1, 6.3.3, 6.3.8, 6.4.3, 6.5.1, 7.4.1, 7.4.3, 7.5.1.</summary>
public sealed partial class SignInTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task After_the_password_comes_the_code_and_before_it_nothing_is_open()
    {
        var (_, email, key) = await WithCodesAsync("runa");
        using var visitor = host.Visitor();
        using (var step = await visitor.SignInAsync(email))
        {
            Assert.Equal("/account/code?back=%2F", step.Leads());
        }

        Assert.StartsWith("/account/sign-in", (await visitor.See("/account")).Location, StringComparison.Ordinal);
        var code = await Form.At(visitor, "/account/code");
        var (_, wrong, _) = await (await code.Set("Form.Code", "123").Post()).Read();
        Assert.Contains("f-Form-Code-error", wrong, StringComparison.Ordinal);
        using var right = await (await Form.At(visitor, "/account/code")).Set("Form.Code", Now(key)).Post();
        Assert.Equal("/", right.Leads());
        Assert.Equal(HttpStatusCode.OK, (await visitor.See("/account")).Status);
    }

    [Fact]
    public async Task Wrong_codes_count_as_wrong_passwords_do()
    {
        var (_, email, key) = await WithCodesAsync("sief");
        using var visitor = host.Visitor();
        using (await visitor.SignInAsync(email))
        {
        }

        for (var i = 0; i < 5; i++)
        {
            using var wrong = await (await Form.At(visitor, "/account/code")).Set("Form.Code", "000").Post();
        }

        // It rests now: not even the right code helps, and the sign-in has to begin anew.
        using var visit = await visitor.GetAsync(new Uri("/account/code", UriKind.Relative), Ct);
        using var right = await Form.Of(visitor, "/account/code", await visit.Content.ReadAsStringAsync(Ct)).Set("Form.Code", Now(key)).Post();
        Assert.Equal("/account/sign-in", right.Leads());
        Assert.StartsWith("/account/sign-in", (await visitor.See("/account")).Location, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_right_password_between_them_does_not_begin_the_count_of_wrong_codes_anew()
    {
        var (_, email, key) = await WithCodesAsync("jelle");
        using var visitor = host.Visitor();
        for (var i = 0; i < 6; i++)
        {
            using var step = await visitor.SignInAsync(email);
            if (step.Leads()?.StartsWith("/account/code", StringComparison.Ordinal) != true)
            {
                break;
            }

            using var wrong = await (await Form.At(visitor, "/account/code")).Set("Form.Code", "000").Post();
        }

        using var rests = await visitor.SignInAsync(email);
        Assert.Equal(HttpStatusCode.OK, rests.StatusCode);
        Assert.NotEmpty(key);
    }

    [Fact]
    public async Task Wrong_passwords_typed_inside_make_the_account_rest_too()
    {
        using var inside = await host.SignedIn(await StudentAsync("sanne"), SignInWay.Password);
        for (var i = 0; i < 5; i++)
        {
            using var wrong = await (await Form.At(inside, "/account/password")).Set("Form.Old", $"wrong {i}").Set("Form.Password", "nine gulls over the pier").Post();
        }

        var (_, page, _) = await (await (await Form.At(inside, "/account/password")).Set("Form.Old", ClinicHost.Password).Set("Form.Password", "nine gulls over the pier").Post()).Read();

        Assert.Contains("rests for five minutes", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nobody_comes_to_the_code_without_a_right_password()
    {
        using var visitor = host.Visitor();
        Assert.Equal("/account/sign-in", (await visitor.See("/account/code")).Location);
    }

    [Fact]
    public async Task A_teacher_with_a_password_alone_is_led_to_the_second_step_and_nowhere_else()
    {
        using var teacher = await host.SignedIn(await TeacherAsync("edda"), SignInWay.Password);

        Assert.Equal("/account/second-step", (await teacher.See("/")).Location);
        Assert.StartsWith("/account/not-yours", (await teacher.See("/desk")).Location, StringComparison.Ordinal);
        Assert.Equal("/account/second-step", (await teacher.See("/account/not-yours")).Location);
        Assert.Equal(HttpStatusCode.OK, (await teacher.See("/account/second-step")).Status);
    }

    [Fact]
    public async Task An_app_is_set_up_by_its_first_code_and_the_teacher_is_in()
    {
        using var teacher = await host.SignedIn(await TeacherAsync("wine"), SignInWay.Password);
        var before = (await teacher.See("/account/codes")).Page;
        Assert.Empty(KeyIn().Matches(before));
        var (_, page, _) = await (await Form.Named(teacher, "/account/codes", before, "codes-begin").Post()).Read();
        var key = TimeCode.FromLetters(KeyIn().Match(page).Groups[1].Value);

        var (status, codes, _) = await (await Form.Named(teacher, "/account/codes", page, "codes-on").Set("Form.Code", Now(key)).Post()).Read();

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Equal(SecondStepBook.HowManyCodes, RecoveryCodeIn().Count(codes));
        Assert.Equal(HttpStatusCode.OK, (await teacher.See("/desk")).Status);
    }

    [Fact]
    public async Task Passkeys_are_asked_for_without_a_name_so_that_nobody_learns_who_has_one()
    {
        using var visitor = host.Visitor();
        var page = (await visitor.See("/account/sign-in")).Page;
        await host.AddPasskeyAsync(await StudentAsync("aukje"));
        using var options = await Form.Named(visitor, "/account/sign-in", page, "passkey").Set("username", _lastEmail).PostTo("/account/passkey/use");
        using var json = System.Text.Json.JsonDocument.Parse(await options.Content.ReadAsStringAsync(Ct));

        Assert.Equal(0, json.RootElement.TryGetProperty("allowCredentials", out var allowed) ? allowed.GetArrayLength() : 0);
        Assert.Equal("required", json.RootElement.GetProperty("userVerification").GetString());

        // 32 random bytes, ASVS 6.7.2 asks for 8.
        Assert.True(json.RootElement.GetProperty("challenge").GetString()!.Length >= 43);
    }

    [Theory]
    [InlineData("")]
    [InlineData("{}")]
    [InlineData("not json")]
    [InlineData("""{"id":"AA","rawId":"AA","type":"public-key","response":{"clientDataJSON":"AA","authenticatorData":"AA","signature":"AA"}}""")]
    public async Task A_made_up_passkey_opens_nothing(string credential)
    {
        using var visitor = host.Visitor();
        var page = (await visitor.See("/account/sign-in")).Page;
        using (await Form.Named(visitor, "/account/sign-in", page, "passkey").PostTo("/account/passkey/use"))
        {
        }

        var (status, answer, _) = await (await Form.Named(visitor, "/account/sign-in", page, "passkey").Set("Form.Credential", credential).Post()).Read();

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Contains("isn’t known here", WebUtility.HtmlDecode(answer), StringComparison.Ordinal);
        Assert.StartsWith("/account/sign-in", (await visitor.See("/account")).Location, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Signed_out_elsewhere_is_signed_out_there_at_the_next_request()
    {
        var account = await StudentAsync("tove");
        using var here = await host.SignedIn(account);
        using var there = await host.SignedIn(account);
        var page = (await here.See("/account")).Page;

        using var ended = await Form.Named(here, "/account", page, "end-others").Post();

        Assert.StartsWith("/account/sign-in", (await there.See("/account")).Location, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await here.See("/account")).Status);
    }

    [Fact]
    public async Task A_cookie_that_was_signed_out_opens_nothing_when_it_is_shown_again()
    {
        var account = await StudentAsync("mirre");
        var (here, again) = await host.SignedInTwiceByOneCookie(account);
        using var _ = here;
        using var __ = again;
        Assert.Equal(HttpStatusCode.OK, (await again.See("/account")).Status);
        using var bye = await Form.Of(here, "/", (await here.See("/")).Page, "/account/sign-out").Post();

        Assert.Equal("\"cache\"", Assert.Single(bye.Headers.GetValues("Clear-Site-Data")));
        Assert.StartsWith("/account/sign-in", (await again.See("/account")).Location, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/account/new-password/short")]
    [InlineData("/account/new-password/aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa")]
    public async Task A_link_that_is_no_good_says_so_calmly(string path)
    {
        using var visitor = host.Visitor();
        var (status, page, _) = await visitor.See(path);

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Contains("no longer good", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Asking_for_a_new_password_says_the_same_whether_or_not_the_address_has_an_account()
    {
        await StudentAsync("known");
        var answers = new List<string>();
        foreach (var email in new[] { _lastEmail, ClinicHost.NewEmail("nobody") })
        {
            using var visitor = host.Visitor();
            using var answer = await (await Form.At(visitor, "/account/forgotten")).Set("Form.Email", email).Post();
            answers.Add($"{(int)answer.StatusCode} {Tokens().Replace(await answer.Content.ReadAsStringAsync(Ct), "")}");
        }

        Assert.Equal(answers[0], answers[1]);
    }

    private static string _lastEmail = "";

    private static string Now(byte[] key) => TimeCode.Of(key, TimeCode.StepAt(TimeProvider.System.GetUtcNow()));

    private async Task<(AccountId Account, string Email, byte[] Key)> WithCodesAsync(string name)
    {
        var account = await StudentAsync(name);
        await using var scope = host.Services.CreateAsyncScope();
        var book = scope.ServiceProvider.GetRequiredService<SecondStepBook>();
        var actor = new Actor(account, null, false, false) { IsFresh = true };
        var key = TimeCode.FromLetters(Assert.IsType<Outcome<string>.Done>(await book.BeginAsync(actor, Parcel.NewOperation(), Ct)).Value);

        // The code of the step before: this moment's is still to be used.
        var before = TimeCode.Of(key, TimeCode.StepAt(TimeProvider.System.GetUtcNow()) - 1);
        Assert.IsType<Outcome<IReadOnlyList<string>>.Done>(await book.ConfirmAsync(actor, before, Parcel.NewOperation(), Ct));
        return (account, _lastEmail, key);
    }

    private Task<AccountId> StudentAsync(string name) => AccountAsync(name, null);

    private Task<AccountId> TeacherAsync(string name) => AccountAsync(name, Role.Teacher);

    private async Task<AccountId> AccountAsync(string name, Role? role)
    {
        (var account, _lastEmail) = await host.AccountAsync(name, role);
        return account;
    }

    [GeneratedRegex("<p class=\"key\"><code>([^<]+)</code>")]
    private static partial Regex KeyIn();

    [GeneratedRegex(@"<li><code>[a-z0-9]{5}(-[a-z0-9]{5}){4}</code></li>")]
    private static partial Regex RecoveryCodeIn();

    [GeneratedRegex("value=\"[^\"]*\"|<!--.*?-->")]
    private static partial Regex Tokens();
}
