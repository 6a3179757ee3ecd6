using System.Net;
using System.Text.RegularExpressions;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Letters;

/// <summary>What guards the pages of private links (RFC 9111, the W3C’s Referrer Policy, RFC 6265), one thing at a time, for a letter and for the end of its link.</summary>
public sealed partial class LetterLinkGuardTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("Referrer-Policy", "no-referrer")]
    [InlineData("X-Robots-Tag", "nofollow, noindex")]
    [InlineData("Cache-Control", "no-store, private")]
    [InlineData("Set-Cookie", "")]
    public async Task Every_answer_keeps_to_itself(string header, string value)
    {
        var link = await MadeAsync("Guri");
        using var stranger = host.Visitor();
        foreach (var path in new[] { link, $"{link}/file?paper=a4", $"{link}/pictures/none", $"{link}/recordings/{Guid.Empty}", $"/read/{new string('x', 43)}", $"/read/{new string('x', 43)}/file" })
        {
            using var answer = await stranger.GetAsync(new Uri(path, UriKind.Relative), Ct);
            Assert.Equal(value, string.Join(", ", answer.Headers.TryGetValues(header, out var said) ? said.SelectMany(one => one.Split(", ")).Order(StringComparer.Ordinal) : []));
        }
    }

    [Fact]
    public async Task What_no_link_leads_to_is_not_there()
    {
        using var stranger = host.Visitor();
        foreach (var path in new[] { $"/read/{new string('x', 43)}", $"/read/{new string('x', 43)}/pictures/none", $"/read/{new string('x', 43)}/recordings/{Guid.Empty}" })
        {
            Assert.Equal(HttpStatusCode.NotFound, (await stranger.See(path)).Status);
        }
    }

    private async Task<string> MadeAsync(string student)
    {
        using var _ = await host.Student(student);
        var batch = (await host.Announce(student, "green thread")).Batch;
        await host.SendLetter(batch.Code);
        using var teacher = await host.Teacher();
        var path = $"/batches/{batch.Code}/letter";
        var (_, made, _) = await (await Form.Named(teacher, path, (await teacher.See(path)).Page, "letter-link").Set("Link.Days", "7").Post()).Read();
        return new Uri(Link().Match(made).Groups[1].Value).AbsolutePath;
    }

    [GeneratedRegex("<code class=\"link-once\" id=\"letter-link\">([^<]+)</code>")]
    private static partial Regex Link();
}
