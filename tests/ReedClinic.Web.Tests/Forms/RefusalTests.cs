using AngleSharp.Html.Parser;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Forms;

/// <summary>
/// What a refused form says first: its title, and what has the focus. WCAG 2.2: 2.4.2 (page titled), 3.3.1 (error
/// identification), 4.1.3 (status messages).
/// </summary>
public sealed class RefusalTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    [Theory]
    [InlineData("/account/sign-in", "Sign in", "Form.Email", "nobody@harbour.example", "Form.Password", "not the password")]
    [InlineData("/account/sign-in", "Sign in", "Form.Email", "", "Form.Password", "")]
    [InlineData("/account/sign-up", "Make an account", "Form.Email", "nobody", "Form.Age", "")]
    public async Task A_refused_form_says_so_in_its_title_and_has_the_focus_on_what_is_wrong(string path, string title, string field, string typed, string other, string also)
    {
        await host.OpenStudio();
        var visitor = host.Visitor();
        using var before = new HtmlParser().ParseDocument((await visitor.See(path)).Page);

        using var answer = await (await Form.At(visitor, path)).Set(field, typed).Set(other, also).Post();
        using var after = new HtmlParser().ParseDocument((await answer.Read()).Page);

        Assert.Equal(title, before.Title);
        Assert.Empty(before.QuerySelectorAll("[autofocus]"));
        Assert.Equal($"Needs another look: {title}", after.Title);
        var focused = Assert.Single(after.QuerySelectorAll("[autofocus]"));
        Assert.Equal(("alert", "-1"), (focused.GetAttribute("role"), focused.GetAttribute("tabindex")));
    }
}
