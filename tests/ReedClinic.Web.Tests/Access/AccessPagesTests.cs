using System.Data.Common;
using System.Net;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Access;

/// <summary>
/// The table docs/access/pages.tsv against every page and every address of the running app. OWASP ASVS 5.0: 8.1.1 (the
/// rules are written down), 8.2.1 (function level), 8.2.2 (object level: somebody else's is as if it weren't there).
/// </summary>
public sealed partial class AccessPagesTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static readonly IReadOnlyList<AccessRow> Rows = AccessTable.Read("pages.tsv");

    [Fact]
    public void Every_page_and_every_address_has_a_row_and_every_row_an_address()
    {
        var served = Served().SelectMany(endpoint => MethodsOf(endpoint).Select(method => $"{method} /{endpoint.RoutePattern.RawText!.TrimStart('/')}"));

        Assert.Equal(served.Distinct().Order(StringComparer.Ordinal), Rows.Select(row => row.Name).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Whoever_is_not_signed_in_comes_only_where_the_table_says_why()
    {
        Assert.All(Rows.Where(row => row.Cells["visitor"] != "sign-in"), row => Assert.NotEmpty(row.Why));
        Assert.DoesNotContain(Served(), endpoint =>
            endpoint.Metadata.GetMetadata<IAuthorizeData>() is null && endpoint.Metadata.GetMetadata<IAllowAnonymous>() is null);
    }

    // A page is drawn once before records that take their time are there, as PostgreSQL's do: one that leans on them breaks.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Nobody_comes_where_the_table_keeps_them_out(bool recordsTakeTheirTime)
    {
        await using var there = recordsTakeTheirTime ? new Unhurried() : null;
        var scene = await AccessWalk.OpenAsync(there ?? host);
        var wrong = new List<string>();
        foreach (var row in Rows)
        {
            foreach (var (who, expected) in row.Cells)
            {
                var got = await AskAsync(await scene.ComeAsync(who), row.Name, scene.Fill(row.Name));
                if (got != expected)
                {
                    wrong.Add($"{row.Name} as {who}: expected {expected}, got {got}");
                }
            }
        }

        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    private static async Task<string> AskAsync(HttpClient client, string name, string path)
    {
        var method = name.Split(' ')[0];
        using var answer = method == "GET" ? await client.GetAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken)
            : method is "PUT" or "DELETE" ? await (await Form.At(client, "/trouble", "/lamp")).SendTo(new HttpMethod(method), path)
            : await (await Form.At(client, "/trouble", "/lamp")).Set("lamp", "on").Set("Kind", "Note").Set("Words", "hello")
                .Set("Reed", AccessWalk.Reed).Set("Bytes", "9").SetWhen(path.StartsWith("/recordings", StringComparison.Ordinal), "Kind", "ArrivalSound").PostTo(path);
        return (answer.StatusCode, answer.Leads()) switch
        {
            (HttpStatusCode.NotFound, _) => "none",
            (HttpStatusCode.Found, { } leads) when leads.StartsWith("/account/sign-in", StringComparison.Ordinal) => "sign-in",
            (HttpStatusCode.Found, { } leads) when leads.StartsWith("/account/not-yours", StringComparison.Ordinal) => "not-yours",
            (HttpStatusCode.Found, _) => "leads",
            ( < HttpStatusCode.BadRequest or HttpStatusCode.UnprocessableEntity, _) => "yes",
            (HttpStatusCode.InternalServerError, _) when path is "/trouble" or "/stopped/500" => "yes",
            var (status, leads) => $"{(int)status} {leads}",
        };
    }

    // Files, and what the framework serves for itself, are nobody's.
    private IEnumerable<RouteEndpoint> Served() => host.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
        .Where(endpoint => !Framework().IsMatch(endpoint.RoutePattern.RawText!));

    private static IEnumerable<string> MethodsOf(RouteEndpoint endpoint) =>
        endpoint.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods is { Count: > 0 } methods && !methods.Contains("GET") ? methods : ["GET"];

    private sealed class Unhurried : ClinicHost
    {
        protected override void ConfigureWebHost(IWebHostBuilder builder)
        {
            base.ConfigureWebHost(builder);
            builder.ConfigureTestServices(services => services.ConfigureDbContext<SqliteClinicDb>(options => options.AddInterceptors(new Later())));
        }
    }

    private sealed class Later : DbCommandInterceptor
    {
        public override async ValueTask<InterceptionResult<DbDataReader>> ReaderExecutingAsync(
            DbCommand command, CommandEventData eventData, InterceptionResult<DbDataReader> result, CancellationToken cancellationToken = default)
        {
            await Task.Yield();
            return result;
        }
    }

    [GeneratedRegex(@"^/?_|\.[a-z0-9]+$|\*\*path:file")]
    private static partial Regex Framework();
}
