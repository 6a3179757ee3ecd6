using System.Text.RegularExpressions;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>How people get in: the first owner by the code that was announced, a student by signing up, anybody by signing in.</summary>
public static partial class Door
{
    public const string Password = "a heron on the jetty";
    public const string Owner = "thea@saltsteps.example";
    public const string Student = "pim@saltsteps.example";

    public static async Task OpenTheStudioAsync(this Visitor visitor, ClinicApp app, string thenAt = "/desk")
    {
        await visitor.GoToAsync("/first-run");
        await visitor.LookAsync("first run");
        await visitor.Field("The code from that window").FillAsync(CodeIn().Match(app.Announced).Groups[1].Value);
        await visitor.Field("What is the studio called?").FillAsync("Salt Steps Reeds");
        await visitor.Field("What should we call you?").FillAsync("Thea Marlowe");
        await visitor.Field("E-mail address").FillAsync(Owner);
        await visitor.Field("Password").FillAsync(Password);
        await visitor.PressAsync(visitor.Button("Open the studio"), thenAt);
    }

    public static async Task SignUpAsync(this Visitor visitor, ClinicApp app)
    {
        await visitor.GoToAsync("/");
        await visitor.LookAsync("home for a visitor");
        await visitor.GoToAsync("/account/sign-up");
        await visitor.LookAsync("sign up");
        await visitor.Field("E-mail address").FillAsync(Student);
        await visitor.PressAsync(visitor.Button("Send me the link"), "/account/sign-up");
        await visitor.LookAsync("look into your mail");
        await visitor.GoToAsync(await MailedLinks.PathAsync(app.MailFolder, Student, "/join/", TestContext.Current.CancellationToken));
        await visitor.LookAsync("join");
        await visitor.Field("What should we call you?").FillAsync("Pim");
        await visitor.Page.GetByLabel("16 or older").CheckAsync();
        await visitor.Field("Password").FillAsync(Password);
        await visitor.PressAsync(visitor.Button("Make my account"), "/");
        await visitor.LookAsync("home for a student");
    }

    public static async Task SignInAsync(this Visitor visitor, string email, string thenAt, string password = Password)
    {
        await visitor.GoToAsync("/account/sign-in");
        await visitor.LookAsync("sign in");
        await visitor.Field("E-mail address").FillAsync(email);
        await visitor.Field("Password").FillAsync(password);
        await visitor.PressAsync(visitor.Button("Sign in"), thenAt);
    }

    [GeneratedRegex(@"enter this code, once: (\S+)")]
    private static partial Regex CodeIn();
}
