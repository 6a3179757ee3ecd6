using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>
/// The program as it would be installed, with an authenticator of Chromium's own making: W3C Web Authentication Level 3,
/// section 11 (virtual authenticators). OWASP ASVS 5.0: 6.3.1, 6.3.3, 6.5.6.
/// </summary>
public sealed class PasskeyTests(OneBrowser browser, LoopbackClinic app) : IClassFixture<LoopbackClinic>
{
    [Fact]
    public async Task The_owner_adds_a_passkey_and_comes_in_by_it_even_while_wrong_passwords_pour_in()
    {
        // A passkey belongs to a name, and 127.0.0.1 is none.
        var home = new UriBuilder(app.Home) { Host = "localhost" }.Uri;
        await using var owner = await browser.VisitAsync(home, "passkey", width: 390);
        await GiveAuthenticatorAsync(owner.Page);
        await owner.OpenTheStudioAsync(app, thenAt: "/account/second-step");
        await owner.LookAsync("second step");
        await owner.FitsAsync();
        await owner.PressAsync(owner.Button("Add a passkey"), "/desk");

        await SignOutAsync(owner);
        await PasswordAsync(owner, Door.Password);
        await owner.ArriveAsync("/account/again");
        await SignOutAsync(owner);
        for (var i = 0; i < 6; i++)
        {
            await PasswordAsync(owner, $"not the password of anybody {i}");
            await owner.Page.GetByText("don’t belong together").WaitForAsync();
        }

        await PasswordAsync(owner, Door.Password);
        await owner.Page.GetByText("don’t belong together").WaitForAsync();
        await owner.PressAsync(owner.Button("Sign in with a passkey"), "/desk");

        await owner.GoToAsync("/account");
        await owner.LookAsync("my account");
        await owner.FitsAsync();
    }

    private static async Task GiveAuthenticatorAsync(IPage page)
    {
        var browser = await page.Context.NewCDPSessionAsync(page);
        await browser.SendAsync("WebAuthn.enable");
        await browser.SendAsync("WebAuthn.addVirtualAuthenticator", new()
        {
            ["options"] = new Dictionary<string, object>
            {
                ["protocol"] = "ctap2",
                ["transport"] = "internal",
                ["hasResidentKey"] = true,
                ["hasUserVerification"] = true,
                ["isUserVerified"] = true,
                ["automaticPresenceSimulation"] = true,
            },
        });
    }

    private static async Task PasswordAsync(Visitor visitor, string password)
    {
        await visitor.GoToAsync("/account/sign-in");
        await visitor.Field("E-mail address").FillAsync(Door.Owner);
        await visitor.Field("Password").FillAsync(password);
        await visitor.Button("Sign in").ClickAsync();
        await visitor.Page.WaitForLoadStateAsync();
    }

    private static async Task SignOutAsync(Visitor visitor)
    {
        await visitor.Button("Sign out").ClickAsync();
        await visitor.ArriveAsync("/");
    }
}
