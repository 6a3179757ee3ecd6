# Parts of a .NET folder on top of a base. Built by make-images.sh, which sends the folder.
ARG BASE
FROM ${BASE}
COPY dotnet/ /usr/share/dotnet/
RUN ln -sf /usr/share/dotnet/dotnet /usr/bin/dotnet
# How NuGet asks about revoked signatures: as on the machine that makes the image.
ARG NUGET_CERT_REVOCATION_MODE
ENV NUGET_CERT_REVOCATION_MODE=${NUGET_CERT_REVOCATION_MODE}
ENV DOTNET_RUNNING_IN_CONTAINER=true DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1
