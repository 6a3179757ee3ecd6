using System.Net;
using AngleSharp.Html.Parser;
using ReedClinic.Web.Tests.Guardians;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Account;

/// <summary>Changing what one is called, in My account.</summary>
public sealed class OwnNameTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    [Fact]
    public async Task A_new_name_shows_on_ones_own_pages_and_on_the_guardians()
    {
        var student = await host.YoungerAsync("Fenna Vale");
        var (guardian, ward) = await host.AgreedAsync(student, ClinicHost.NewEmail("rosa"));
        Assert.Contains("href=\"/account/name\"", await student.TextAsync("/account"), StringComparison.Ordinal);

        using var changed = await (await Form.At(student, "/account/name")).Set("Form.Name", "Finn Vale").Post();

        Assert.Equal("/account?done=name", changed.Leads());
        Assert.Contains("Your name is changed.", await student.TextAsync("/account?done=name"), StringComparison.Ordinal);
        Assert.Contains("<bdi class=\"wide\">Finn Vale</bdi>", await student.TextAsync("/account"), StringComparison.Ordinal);
        Assert.Contains("<h1><bdi>Finn Vale</bdi></h1>", await guardian.TextAsync(ward), StringComparison.Ordinal);
        Assert.Equal("Finn Vale", (await Form.At(student, "/account/name"))["Form.Name"]);
    }

    [Fact]
    public async Task A_name_that_cannot_be_is_refused_beside_its_field_and_nothing_typed_is_lost()
    {
        var student = await host.Student("Gerda");

        using var answer = await (await Form.At(student, "/account/name")).Set("Form.Name", "Gerda\r\nX-Odd: yes").Post();
        var (status, page, _) = await answer.Read();

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.False(answer.Headers.Contains("X-Odd"));
        using var document = new HtmlParser().ParseDocument(page);
        Assert.NotNull(document.QuerySelector("#f-Form-Name-error"));
        Assert.Contains("X-Odd", document.QuerySelector("#f-Form-Name")!.GetAttribute("value"), StringComparison.Ordinal);
        Assert.Contains("Gerda", await student.TextAsync("/account"), StringComparison.Ordinal);
    }
}
