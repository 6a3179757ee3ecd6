using System.Buffers.Binary;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.TestHost;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;
using ReedClinic.Data;
using ReedClinic.Data.People;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Account;

/// <summary>A stored password keeps up with the work that is asked of it. The numbers are small ones: what is tested is that they follow.</summary>
public sealed class RehashTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_password_that_was_hashed_with_fewer_rounds_is_hashed_anew_at_sign_in()
    {
        var email = ClinicHost.NewEmail("runa");
        await host.Admit("Runa", email);
        await using (var scope = host.Services.CreateAsyncScope())
        {
            var db = scope.ServiceProvider.GetRequiredService<ClinicDb>();
            var account = await db.Users.SingleAsync(user => user.Email == email, Ct);
            account.PasswordHash = new PasswordHasher<ClinicAccount>(Options.Create(new PasswordHasherOptions { IterationCount = 10_000 })).HashPassword(account, ClinicHost.Password);
            await db.SaveChangesAsync(Ct);
        }

        Assert.Equal(10_000u, await RoundsAsync(email));
        await using var stricter = host.WithWebHostBuilder(builder => builder.ConfigureTestServices(services => services.Configure<PasswordHasherOptions>(options => options.IterationCount = 20_000)));
        using var visitor = stricter.CreateClient(new() { BaseAddress = new Uri("https://localhost"), AllowAutoRedirect = false });
        using var inside = await (await Form.At(visitor, "/account/sign-in")).Set("Form.Email", email).Set("Form.Password", ClinicHost.Password).Post();

        Assert.Equal("/", inside.Leads());
        Assert.Equal(20_000u, await RoundsAsync(email));
    }

    // The layout of ASP.NET Core Identity's third format: a marker, the function, the rounds, each number big-endian.
    private async Task<uint> RoundsAsync(string email)
    {
        await using var scope = host.Services.CreateAsyncScope();
        var hash = (await scope.ServiceProvider.GetRequiredService<ClinicDb>().Users.AsNoTracking().SingleAsync(user => user.Email == email, Ct)).PasswordHash!;
        return BinaryPrimitives.ReadUInt32BigEndian(Convert.FromBase64String(hash).AsSpan(5));
    }
}
